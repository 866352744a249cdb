package season

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
	"time"
)

// Sheet is what a picture shows, as rows under a head, where it is no Table: the fish of length
// against light, the bars of clock and light, the nights.
type Sheet struct {
	Name string
	Card int // whose picture it is; 0: of what it all comes to
	Rows [][]string
}

// Sheets returns all of them.
func (s *Season) Sheets() []Sheet {
	return []Sheet{s.nightSheet(), s.darkSheet(), s.axisSheet(), s.fishSheet()}
}

// Sheet returns one by its name, nil if there is none.
func (s *Season) Sheet(name string) *Sheet {
	for _, x := range s.Sheets() {
		if x.Name == name {
			return &x
		}
	}
	return nil
}

func (s *Season) nightSheet() Sheet {
	rows := [][]string{{"evening", "beat", "trend", "rods", "hours", "shows", "touches", "lost", "landed", "gaps"}}
	for _, n := range s.List {
		rows = append(rows, []string{n.Evening.String(), n.Beat, string(n.Trend), strconv.Itoa(n.Rods), num(n.Hours),
			num(n.Chain.Shows), num(n.Chain.Touches), num(n.Chain.Lost), num(n.Chain.Landed), strconv.Itoa(n.Gaps)})
	}
	return Sheet{"nights", 0, rows}
}

// darkSheet has each logged moment, with the threshold of its beat beside it.
func (s *Season) darkSheet() Sheet {
	rows := [][]string{{"beat", "evening", "at", "lux", "pool", "pool_lux", "left_out", "used_lux"}}
	for _, d := range s.Darkness {
		for _, l := range d.Logs {
			lux := ""
			if l.PoolLux > 0 {
				lux = num(l.PoolLux)
			}
			rows = append(rows, []string{d.Name, l.Evening.String(), l.At.UTC().Format(time.RFC3339), num(l.Lux), l.Pool, lux, l.Apart, num(d.Used)})
		}
	}
	return Sheet{"darkness", 1, rows}
}

func (s *Season) axisSheet() Sheet {
	rows := [][]string{{"axis", "from", "to", "hours", "nights", "fish", "relative_rate"}}
	for _, a := range []struct {
		name string
		rows []AxisRow
	}{{"clock", s.ClockOrLight.Clock.Rows}, {"light", s.ClockOrLight.Light.Rows}} {
		for _, r := range a.rows {
			rows = append(rows, []string{a.name, strconv.Itoa(r.From), strconv.Itoa(r.To), num(r.Hours), strconv.Itoa(r.Nights), num(r.Fish), num(r.Rate)})
		}
	}
	return Sheet{"axes", 3, rows}
}

func (s *Season) fishSheet() Sheet {
	rows := [][]string{{"evening", "number", "touch", "fly_mm", "silhouette", "tone", "hot_spot", "darker", "lux", "lux_low", "lux_high", "in_a_run", "off_rules"}}
	if s.LengthLight == nil {
		return Sheet{"fish", 5, rows}
	}
	for _, f := range s.LengthLight.Fish {
		var off []string
		for _, id := range f.Outside {
			for _, r := range s.Rules {
				if r.ID == id {
					off = append(off, r.Words)
				}
			}
		}
		rows = append(rows, []string{f.Evening.String(), strconv.Itoa(f.N), string(f.Touch), num(f.Length), string(f.Shape), string(f.Tone),
			strconv.FormatBool(f.HotSpot), num(f.Darker), num(f.Lux), num(f.LuxLow), num(f.LuxHigh), strconv.FormatBool(!f.NoHours), strings.Join(off, "; ")})
	}
	return Sheet{"fish", 5, rows}
}

// WriteCSV writes the sheet as Table.WriteCSV does a table.
func (x Sheet) WriteCSV(w io.Writer, head ...string) error {
	c, err := beginCSV(w, head)
	if err != nil {
		return err
	}
	if err := c.WriteAll(x.Rows); err != nil {
		return err
	}
	return c.Error()
}

// beginCSV writes the lines that say what the figures are made from.
func beginCSV(w io.Writer, head []string) (*csv.Writer, error) {
	for _, h := range head {
		if _, err := io.WriteString(w, "# "+strings.ReplaceAll(h, "\n", " ")+"\r\n"); err != nil {
			return nil, err
		}
	}
	c := csv.NewWriter(w)
	c.UseCRLF = true
	return c, nil
}
