package words

import (
	"strings"

	"gloamline/journal"
	"gloamline/timeline"
)

// EntryLines says any entry of a night as it stands in the log, what it is first,
// its note last. Every kind has words; there is always at least one line.
func EntryLines(n *timeline.Night, e journal.Entry, p Prefs) []string {
	var out []string
	switch e := e.(type) {
	case journal.Run:
		out = runLines(n, e)
	case journal.Rig:
		out = rigLines(n, e, p)
	case journal.Way:
		out = []string{Way(e)}
	case journal.Contact:
		for _, k := range n.Contacts {
			if k.ID == e.ID {
				return ContactLines(n, k, p)
			}
		}
		out = []string{ContactLine(timeline.Contact{Contact: e, Fly: timeline.FlyOn{Position: e.Position.Or(timeline.NoPosition)}}, p)}
	case journal.Sky:
		out = []string{SkyLine(e)}
	case journal.Weather:
		out = []string{WeatherLine(e, p)}
	case journal.Water:
		out = []string{WaterLine(e, p)}
	case journal.Ready:
		out = []string{poolOf(n, e.Pool) + " ready: dark enough not to scare the fish"}
	case journal.Break:
		out = []string{breakLine(n, e)}
	case journal.End:
		out = []string{endLine(e)}
	case journal.Plan:
		out = []string{planLine(n, e)}
	case journal.Note:
		if id, ok := e.Pool.Get(); ok {
			out = []string{poolOf(n, id)}
		}
	case journal.Photo:
		out = []string{PhotoOf(e.Name)}
	}
	if note := e.Base().Note; note != "" {
		out = append(out, note)
	}
	if kept := strings.Join(out, ""); kept == "" {
		return []string{KindName(e.Ref().Kind)}
	}
	return nonEmpty(out)
}

func nonEmpty(list []string) []string {
	var out []string
	for _, s := range list {
		if s != "" {
			out = append(out, s)
		}
	}
	return out
}

func runLines(n *timeline.Night, e journal.Run) []string {
	for _, r := range n.Rods {
		for _, run := range r.Runs {
			if run.Run.ID == e.ID {
				return []string{commas(RunHeading(n, run, r)+" "+RunTimes(n, run), Rest(run))}
			}
		}
	}
	return []string{poolOf(n, e.Pool) + ", run"}
}

func rigLines(n *timeline.Night, e journal.Rig, p Prefs) []string {
	for i := range n.Rods {
		for _, rig := range n.Rods[i].Rigs {
			if rig.Rig.ID == e.ID {
				return RigLines(&n.Rods[i], rig, p)
			}
		}
	}
	return []string{Tackle(e.Setup, p)}
}

func poolOf(n *timeline.Night, id journal.ID) string {
	p, ok := n.Beat.Pool(id)
	if !ok {
		return "a pool that is not on the beat"
	}
	return PoolName(p.Name)
}

func breakLine(n *timeline.Night, b journal.Break) string {
	if u, ok := b.Until.Get(); ok {
		return "break until " + End(n.Log.Spread(u), n.Zone)
	}
	return "break"
}

var endWhys = map[string]string{
	"enough": "enough", "tired": "tired", "cold": "cold", "mist": "mist", "rain": "rain", "river rising": "river rising",
	"dawn": "dawn", "no fish showing": "no fish showing", "limit reached": "limit reached", "time": "out of time", "other": "for another reason",
}

func endLine(e journal.End) string {
	if why, ok := e.Why.Get(); ok {
		return "end of fishing: " + endWhys[why]
	}
	return "end of fishing"
}

func planLine(n *timeline.Night, p journal.Plan) string {
	pool, order, light := "", "", ""
	if id, ok := p.Pool.Get(); ok {
		pool = poolOf(n, id)
	}
	if o, ok := p.Order.Get(); ok && o > 0 {
		order = ordinal(o)
	}
	if l, ok := p.Earliest.Get(); ok {
		light = "not before it is as dark as " + l.String()
	}
	if s := commas(join(" ", []string{pool, order}), light); s != "" {
		return "plan: " + s
	}
	return "plan"
}

// MomentShort says when an entry was, in the column of the log.
func MomentShort(n *timeline.Night, w journal.When) string {
	return Moment(w, n.Log.Spread(w), n.Zone)
}
