package pen

import (
	"fmt"
	"reflect"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
)

// Print writes an entry as a line that reads back as the same entry, but for its
// identity and origin. It returns false if some of it has no words here (GRAMMAR.md
// lists the fields that have), or if its words have a second meaning on this beat:
// the text then says what it can.
func Print(e journal.Entry, ctx Context) (string, bool) {
	p := printer{ctx: ctx}
	p.entry(e)
	text := strings.Join(p.out, " ")
	if ReadsBack(text, e, ctx) {
		return text, true
	}
	if _, isRig := e.(journal.Rig); isRig { // a change of some flies keeps the others
		if alone := text + " alone"; ReadsBack(alone, e, ctx) {
			return alone, true
		}
	}
	return text, false
}

// ReadsBack reports whether a text is read as exactly one entry, that one.
func ReadsBack(text string, e journal.Entry, ctx Context) bool {
	ctx.Chosen = nil
	page := Read(text, ctx)
	if len(page.Lines) != 1 || len(page.Lines[0].Clauses) != 1 {
		return false
	}
	rs := page.Lines[0].Clauses[0].Readings
	if len(rs) != 1 || len(rs[0].Entries) != 1 || len(rs[0].Flies) > 0 || len(rs[0].Missing) > 0 || len(rs[0].Asks) > 0 {
		return false
	}
	bare := func(e journal.Entry) journal.Entry {
		h := e.Base()
		h.ID, h.From = journal.ID{}, journal.Origin{}
		if len(h.When.Anchors) > 0 { // what it hangs on says when; the bounds are only a memory of that
			h.When.Lo, h.When.Hi = time.Time{}, time.Time{}
		}
		return e.WithHead(h)
	}
	return reflect.DeepEqual(bare(rs[0].Entries[0]), bare(e))
}

type printer struct {
	ctx Context
	out []string
}

func (p *printer) say(words ...string) {
	for _, w := range words {
		if w != "" {
			p.out = append(p.out, w)
		}
	}
}

// saying prints a field that is known.
func saying[T any](p *printer, f journal.Field[T], words func(T) string) {
	if v, ok := f.Get(); ok {
		p.say(words(v))
	}
}

func text[T ~string](v T) string { return string(v) }

// in returns a printer of values by a table.
func in[T comparable](table map[T]string) func(T) string { return func(v T) string { return table[v] } }

var (
	touchWords   = map[journal.Touch]string{journal.Follow: "follow", journal.Boil: "boil", journal.Pluck: "pluck", journal.Pull: "pull", journal.Lost: "came off", journal.Landed: "landed"}
	speciesWords = map[journal.Species]string{journal.SeaTrout: "sea trout", journal.BrownTrout: "brown trout", journal.Salmon: "salmon", journal.OtherFish: "other fish"}
	liceWords    = map[bool]string{true: "sea lice", false: "no sea lice"}
	placeWords   = []string{"point", "dropper 1", "dropper 2", "dropper 3"}
	lineWords    = map[journal.LineKind]string{journal.Floating: "floating line", journal.Intermediate: "intermediate line", journal.SinkTip: "sink-tip line", journal.Sinking: "sinking line"}
	depthWords   = map[journal.Depth]string{journal.OnSurface: "at the surface", journal.UnderSurface: "just under", journal.MidWater: "mid-water", journal.Deep: "deep"}
	kindWords    = map[journal.CloudKind]string{journal.ThinCloud: "thin cloud", journal.AverageCloud: "average cloud", journal.DarkCloud: "dark cloud"}
	moonWords    = map[journal.MoonSeen]string{journal.MoonClear: "moon up", journal.MoonVeiled: "moon veiled", journal.MoonBehind: "moon behind"}
	trendWords   = map[journal.Trend]string{journal.Rising: "rising", journal.Peak: "at its peak", journal.FallingFlood: "falling flood", journal.FiningDown: "fining down", journal.NormalLevel: "normal level"}
	clarityWords = map[journal.Clarity]string{journal.ClearWater: "clear water", journal.TeaWater: "tea coloured", journal.ColouredWater: "coloured water"}
	whyWords     = map[string]string{"time": "time up", "other": "other reasons"}
)

func (p *printer) entry(e journal.Entry) {
	h := e.Base()
	if n, ok := e.(journal.Note); ok {
		if n.Private {
			p.say("private")
		}
		p.say("note:", p.when(h.When)+":", h.Note)
		return
	}
	for _, r := range p.ctx.Rods {
		if r.ID == h.Rod {
			p.say(r.Name)
		}
	}
	until := journal.Field[journal.When]{}
	switch e := e.(type) {
	case journal.Run:
		p.pool(e.Pool)
		saying(p, e.Bank, func(b journal.Bank) string { return string(b) + " bank" })
		until = e.Until
	case journal.Contact:
		p.contact(e)
	case journal.Rig:
		p.rig(e)
	case journal.Way:
		saying(p, e.Speed, text)
		saying(p, e.Depth, in(depthWords))
	case journal.Sky:
		saying(p, e.Cloud, func(n int) string { return fmt.Sprintf("%d/8", n) })
		saying(p, e.CloudKind, in(kindWords))
		saying(p, e.Moon, in(moonWords))
		if e.Moon.IsNone() {
			p.say("no moon")
		}
		if e.TreesGrey {
			p.say("trees grey")
		}
		if e.Step {
			p.say("at once")
		}
	case journal.Weather:
		saying(p, e.Wind, func(n int) string { return fmt.Sprintf("force %d", n) })
		saying(p, e.From, func(d units.Degrees) string {
			if n := int(d / 22.5); float64(d) == float64(n)*22.5 && n < len(compass) {
				return "wind " + strings.ToUpper(compass[n])
			}
			return fmt.Sprintf("wind %g°", float64(d))
		})
		saying(p, e.Mist, in(map[bool]string{true: "mist", false: "no mist"}))
		saying(p, e.Rain, in(map[bool]string{true: "rain", false: "no rain"}))
		saying(p, e.Air, func(t units.Temperature) string { return "air " + t.String() })
	case journal.Water:
		saying(p, e.Level, func(l units.Length) string { return "level " + l.String() })
		saying(p, e.Trend, in(trendWords))
		saying(p, e.Clarity, in(clarityWords))
		saying(p, e.Temp, func(t units.Temperature) string { return "river " + t.String() })
	case journal.Ready:
		p.pool(e.Pool)
		p.say("ready")
	case journal.Break:
		p.say("break")
		until = e.Until
	case journal.End:
		p.say("end")
		saying(p, e.Why, func(w string) string {
			if s := whyWords[w]; s != "" {
				return s
			}
			return w
		})
	}
	p.say(p.when(h.When))
	saying(p, until, func(w journal.When) string { return "until " + p.when(w) })
	if h.Note != "" {
		p.say("(" + h.Note + ")")
	}
}

// when prints a moment; the bounds of one moment as “between”, since of a run 2220-2310
// are its two ends.
func (p *printer) when(w journal.When) string {
	c := p.ctx.Clock
	if w.Kind == journal.BetweenTime && len(w.Anchors) == 0 {
		return "between " + c.print(w.Lo) + " and " + c.print(w.Hi)
	}
	return c.Print(w)
}

// pool prints a pool's name, with “pool” before it if the name is a word of the trade.
func (p *printer) pool(id journal.ID) {
	pool, ok := p.ctx.Beat.Pool(id)
	if !ok {
		return
	}
	x := lexer{text: pool.Name, atoms: cut(pool.Name, Span{0, len(pool.Name)}, nil)}
	if n, _ := x.walk(words, 0); n == len(x.atoms) {
		p.say("pool")
	}
	p.say(pool.Name)
}

func (p *printer) fly(id journal.ID) string {
	for _, f := range p.ctx.Flies {
		if f.ID == id {
			return strings.ReplaceAll(PrintDress(f.On(p.ctx.Clock.Evening)), ",", "")
		}
	}
	return ""
}

func (p *printer) contact(k journal.Contact) {
	about := map[bool]string{true: "about "}
	p.say(touchWords[k.Touch])
	saying(p, k.Species, in(speciesWords))
	saying(p, k.Class, text)
	saying(p, k.Sex, text)
	saying(p, k.Weight, func(w units.Weight) string { return about[k.Estimated] + w.String() })
	saying(p, k.Length, func(l units.Length) string {
		return about[k.ByEye] + strings.TrimSuffix(l.String(), " in") + map[bool]string{true: "\""}[strings.HasSuffix(l.String(), " in")]
	})
	saying(p, k.Lice, in(liceWords))
	saying(p, k.HookPlace, func(s string) string {
		if s == "foul" {
			return "foul hooked"
		}
		return s
	})
	saying(p, k.AirTime, func(n int) string { return fmt.Sprintf("%ds out", n) })
	saying(p, k.Fate, text)
	saying(p, k.Tag, func(s string) string { return "tag " + s })
	if id, ok := k.Pool.Get(); ok {
		p.pool(id)
	}
	saying(p, k.Part, func(s string) string { return s + " of the pool" })
	saying(p, k.Position, func(n int) string { return "on " + placeWords[n] })
	saying(p, k.Fly, func(id journal.ID) string {
		if k.Position.Known() {
			return p.fly(id)
		}
		return "on a " + p.fly(id)
	})
}

func (p *printer) rig(r journal.Rig) {
	saying(p, r.Line, func(l journal.Line) string {
		s := lineWords[l.Kind]
		if v, ok := l.Sink.Get(); ok {
			s += fmt.Sprintf(" %g ips", v)
		}
		return s
	})
	saying(p, r.Leader, func(l units.Length) string { return "leader " + l.String() })
	if r.Surface {
		p.say("surface lure")
	}
	for _, m := range r.Flies {
		if id, ok := m.Fly.Get(); ok {
			if !r.Surface {
				p.say(placeWords[m.Position])
			}
			p.say(p.fly(id))
		}
	}
}
