package state

import (
	"bytes"
	"encoding/csv"
	"strconv"
)

// Table is one table of a report as CSV, with the ending of its file's name: "-steps".
type Table struct {
	Name string
	CSV  []byte
}

// Tables returns the report as tables: the steps of both axes, the nights, the fish,
// the pools. Each begins with how the nights were chosen, as a line of its own that
// begins with #.
func (r Report) Tables() []Table {
	f := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	maybe := func(v *float64) string {
		if v == nil {
			return ""
		}
		return f(*v)
	}
	sum := func(t ReportTotals) []string {
		return []string{f(t.RodHours), f(t.Landed), f(t.Lost), f(t.Touches), f(t.Shows)}
	}
	steps := [][]string{{"axis", "part", "from", "to", "rod_hours", "landed", "lost", "touches", "shows", "nights", "off"}}
	for _, a := range []ReportAxis{r.Time, r.Light} {
		for _, b := range a.Bins {
			row := append([]string{a.Axis, b.Part, f(b.From), f(b.To)}, sum(b.ReportTotals)...)
			steps = append(steps, append(row, strconv.Itoa(b.Nights), ""))
		}
		for _, x := range a.Off { // contacts of any kind
			steps = append(steps, []string{a.Axis, "", "", "", f(x.RodHours), "", "", "", "", strconv.Itoa(x.Nights), x.Why + ", " + strconv.Itoa(x.Contacts) + " contacts"})
		}
	}
	nights := [][]string{{"mark", "evening", "beat", "rod_hours", "landed", "lost", "touches", "shows", "bank_hours", "sunset", "grey_at", "grey_lux", "darkest_lux", "level_m"}}
	for _, n := range r.Nights {
		row := append([]string{n.Mark, n.Evening, n.Beat}, sum(n.ReportTotals)...)
		nights = append(nights, append(row, f(n.BankHours), n.Sunset, n.GreyAt, f(n.GreyLux), f(n.DarkestLux), maybe(n.LevelM)))
	}
	fish := [][]string{{"mark", "number", "earliest", "latest", "rod", "pool", "touch", "weight_g", "fly_mm", "rung", "lux", "lux_low", "lux_high", r.Time.Axis, r.Time.Axis + "_from", r.Time.Axis + "_to", "part", "off"}}
	for _, k := range r.Fish {
		from, to := "", ""
		for i, x := range k.Time.Reach {
			if i == 0 {
				from = f(x.From)
			}
			to = f(x.To)
		}
		fish = append(fish, []string{k.Mark, k.Number, k.Earliest, k.Latest, k.Rod, k.Pool, k.Touch, maybe(k.WeightG), maybe(k.FlyMM), k.Rung, f(k.Lux), f(k.LuxLow), f(k.LuxHigh), maybe(k.Time.At), from, to, k.Light.Part, k.Time.Off})
	}
	pools := [][]string{{"name", "rod_hours", "landed", "lost", "touches", "shows", "runs", "nights"}}
	for _, p := range r.Pools {
		pools = append(pools, append(append([]string{p.Name}, sum(p.ReportTotals)...), strconv.Itoa(p.Runs), strconv.Itoa(p.Nights)))
	}
	var out []Table
	for _, t := range []struct {
		name string
		rows [][]string
	}{{"-steps", steps}, {"-nights", nights}, {"-fish", fish}, {"-pools", pools}} {
		var b bytes.Buffer
		b.WriteString("# " + r.Title + ". " + r.How + "\n")
		w := csv.NewWriter(&b)
		// Writing to memory does not fail.
		_ = w.WriteAll(t.rows)
		out = append(out, Table{t.name, b.Bytes()})
	}
	return out
}
