package state

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
)

// Table is one table of a report as CSV, with the ending of its file's name: "-steps".
type Table struct {
	Name string
	CSV  []byte
}

// Tables returns the report as tables: the steps of both axes, the nights, the fish, the
// pools, the runs, the changes of flies. Each begins with how the nights were chosen, as a line
// of its own that begins with #.
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
	nights := [][]string{{"mark", "evening", "beat", "rod_hours", "landed", "lost", "touches", "shows", "kept", "bank_hours", "sunset", "grey_at", "grey_lux", "darkest_lux", "level_m"}}
	for _, n := range r.Nights {
		row := append(append([]string{n.Mark, n.Evening, n.Beat}, sum(n.ReportTotals)...), f(n.Kept))
		nights = append(nights, append(row, f(n.BankHours), n.Sunset, n.GreyAt, f(n.GreyLux), f(n.DarkestLux), maybe(n.LevelM)))
	}
	fish := [][]string{{"mark", "number", "earliest", "latest", "rod", "pool", "touch", "fate", "weight_g", "length_mm", "fly_mm", "rung", "darker", "lux", "lux_low", "lux_high", r.Time.Axis, r.Time.Axis + "_from", r.Time.Axis + "_to", "part", "off"}}
	for _, k := range r.Fish {
		from, to := "", ""
		for i, x := range k.Time.Reach {
			if i == 0 {
				from = f(x.From)
			}
			to = f(x.To)
		}
		fish = append(fish, []string{k.Mark, k.Number, k.Earliest, k.Latest, k.Rod, k.Pool, k.Touch, k.Fate, maybe(k.WeightG), maybe(k.LengthMM), maybe(k.FlyMM), k.Rung, f(k.Darker), f(k.Lux), f(k.LuxLow), f(k.LuxHigh), maybe(k.Time.At), from, to, k.Light.Part, k.Time.Off})
	}
	pools := [][]string{{"name", "rod_hours", "landed", "lost", "touches", "shows", "runs", "nights"}}
	for _, p := range r.Pools {
		pools = append(pools, append(append([]string{p.Name}, sum(p.ReportTotals)...), strconv.Itoa(p.Runs), strconv.Itoa(p.Nights)))
	}
	runs := [][]string{{"mark", "rod", "pool", "nth", "from", "to", "rest_min", "part", "off"}}
	for _, x := range r.Runs {
		part := ""
		for i, reach := range x.Light.Reach {
			if i == 0 || !strings.Contains(part, reach.Part) {
				part = strings.TrimPrefix(part+" "+reach.Part, " ")
			}
		}
		runs = append(runs, []string{x.Mark, x.Rod, x.Pool, strconv.Itoa(x.Nth), x.From, x.To, maybe(x.RestMin), part, x.Time.Off})
	}
	rigs := [][]string{{"mark", "rod", "at", "until", "point_mm", "dropper_mm", "more_mm", "sink_ips", "leader_m"}}
	for _, x := range r.Rigs {
		flies := [3]string{}
		for i, mm := range x.FlyMM {
			flies[min(i, 2)] = strings.TrimSpace(flies[min(i, 2)] + " " + maybe(mm))
		}
		rigs = append(rigs, []string{x.Mark, x.Rod, x.At, x.Until, flies[0], flies[1], flies[2], maybe(x.SinkIPS), maybe(x.LeaderM)})
	}
	var out []Table
	for _, t := range []struct {
		name string
		rows [][]string
	}{{"-steps", steps}, {"-nights", nights}, {"-fish", fish}, {"-pools", pools}, {"-runs", runs}, {"-rigs", rigs}} {
		var b bytes.Buffer
		b.WriteString("# " + r.Title + ". " + r.How + "\n")
		w := csv.NewWriter(&b)
		// Writing to memory does not fail.
		_ = w.WriteAll(t.rows)
		out = append(out, Table{t.name, b.Bytes()})
	}
	return out
}
