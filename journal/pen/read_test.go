package pen

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
)

// covered checks that the tokens are the whole text and that every clause is an entry
// or a note that a journal takes.
func covered(t require.TestingT, p Page) {
	var b strings.Builder
	at := 0
	for _, l := range p.Lines {
		require.Equal(t, at, l.From)
		for _, k := range l.Tokens {
			require.Equal(t, at, k.From, "a gap or an overlap")
			require.Greater(t, k.To, k.From)
			b.WriteString(k.of(p.Text))
			at = k.To
		}
		for _, c := range l.Clauses {
			require.NoError(t, journal.Check(c.Note))
			if len(c.Readings) == 0 {
				require.NotEmpty(t, c.Note.Reason, "a note without its reason")
			}
			for _, r := range c.Readings {
				require.NotEmpty(t, r.Entries)
				for _, e := range r.Entries {
					if len(r.Missing) == 0 {
						require.NoError(t, journal.Check(e), c.of(p.Text))
					}
				}
				for _, f := range r.Flies {
					if len(r.Missing) == 0 {
						require.NoError(t, journal.Check(f), c.of(p.Text))
					}
				}
			}
		}
	}
	require.Equal(t, p.Text, b.String(), "a byte is lost")
}

// said is what a clause was read as, in short: the kinds, or "note", with labels and
// what is missing.
func said(p Page) string {
	var out []string
	for _, l := range p.Lines {
		if l.Head != nil {
			out = append(out, "night "+l.Head.Evening.String())
		}
		for _, c := range l.Clauses {
			var rs []string
			for _, r := range c.Readings {
				var ks []string
				for _, e := range r.Entries {
					s := string(e.Ref().Kind)
					if k, ok := e.(journal.Contact); ok {
						s = string(k.Touch)
					}
					if e.Base().Note != "" && e.Ref().Kind != journal.KindNote {
						s += "(" + e.Base().Note + ")"
					}
					ks = append(ks, s)
				}
				s := strings.Join(ks, "+")
				if r.Label != "" {
					s = r.Label + "=" + s
				}
				if len(r.Flies) > 0 {
					s += " new fly"
				}
				if len(r.Missing) > 0 {
					s += " lacks " + strings.Join(r.Missing, ",")
				}
				if len(r.Asks) > 0 {
					s += " asks"
				}
				rs = append(rs, s)
			}
			if rs == nil {
				rs = []string{"note"}
			}
			out = append(out, strings.Join(rs, " | "))
		}
	}
	return strings.Join(out, "; ")
}

// Ensure that the examples of the grammar read as they say, for a night on which Anna
// fishes alone.
func TestReadAlone(t *testing.T) {
	for text, want := range map[string]string{
		"A alder 2220-2310 first run": "run",
		"2241 landed 1lb10 dropper":   "landed",
		"about 2250 lost fish point":  "lost",
		"2258 trees grey":             "sky",
		"moon up 0031":                "sky",
		"point 1in slim dark 0036":    "rig",
		"2220-2310 alder A, landed 1lb10 dropper 2241, came off 2250": "run; landed; lost",
		"lost point 2300":                       "hooked, came off=lost | the fly was lost=rig",
		"2310 colour gone":                      "colour gone from the trees=sky | colour gone from the water=river",
		"2310 colour gone from the trees":       "sky",
		"colour gone out of the water 2310":     "river",
		"2315 dropper off":                      "hooked, came off=lost | the fly was taken off=rig",
		"2200 clear":                            "the sky clear=sky | the water clear=river",
		"water clear 2200":                      "river",
		"14C 2215":                              "the air=weather | the water=river",
		"water 14C 2215":                        "river",
		"2300 rose":                             "a boil=boil | the river rising=river",
		"hooked 2300":                           "hooked and landed=landed | hooked, came off=lost",
		"point 1 1/2in slim pale 2300":          "rig new fly",
		"point pale 2300":                       "the fly ¾ in full pale=rig | a new fly, pale=rig new fly",
		"Sat 4 July, Home Beat":                 "night 2026-07-04",
		"4th July 2026":                         "night 2026-07-04",
		"Saturday 4 July Larrick Water":         "night 2026-07-04",
		"2026-07-04":                            "night 2026-07-04",
		"4 July 2241 landed":                    "note",
		"nearly landed one 2330":                "note",
		"zorble the grumph":                     "note",
		"landed 2 in alder 2240":                "note",
		"25:10 landed":                          "note",
		"note: the otter again, 2241 landed":    "note",
		"private note: sore knee":               "note",
		"alder":                                 "note",
		"2241":                                  "note",
		"landed 2241 2250":                      "note",
		"landed 1lb10":                          "landed lacks when",
		"landed 2lb 18oz 2241":                  "note",
		"river up 2in 2200":                     "note",
		"2240 landed (quiet take, I think) hen": "landed(quiet take, I think)",
		"2240 landed hen fresh":                 "landed(fresh)",
		"half past ten landed a fish":           "landed",
		"ten to eleven landed a fish":           "landed",
		"alder and crook 2220-2310":             "note",
		"landed 2240 kept":                      "landed",
		"landed 1 lb 12½\" 2240":                "landed",
		"landed 1 lb 12 in 2240":                "landed",
		"alder 2220-2310, landed 1lb10":         "run; landed",
		"landed 1lb10 in the alder, 2220-2310":  "landed",
		"landed 1 lb 12 oz 18\" 2240":           "landed",
		"came off 2240 kept":                    "note",
		"2241 landed 2lb, 2250 pull, 2310 boil": "landed; pull; boil",
		"2241 landed and lost another 2250":     "landed; lost(another)",
		"écluse 2220-2310":                      "run",
		"ecl 2220-2310":                         "run",
		"grey stane 2220-2310":                  "run",
	} {
		ctx := larrick(t)
		ctx.Rods = ctx.Rods[:1]
		p := Read(text, ctx)
		covered(t, p)
		if got := said(p); got != want {
			why := ""
			if len(p.Lines) > 0 && len(p.Lines[0].Clauses) > 0 {
				why = p.Lines[0].Clauses[0].Note.Reason
			}
			assert.Equal(t, want, got, "%s: %s", text, why)
		}
	}
}

// Ensure that with two rods and none named both are offered, that a line of a rod
// alone settles those after it, and that a choice does.
func TestWhichRod(t *testing.T) {
	ctx := larrick(t)
	assert.Equal(t, "Anna=landed | Colm=landed", said(Read("2241 landed", ctx)))
	assert.Equal(t, "landed; pull", said(Read("Colm:\n2241 landed\n2250 pull", ctx)))
	assert.Equal(t, colm, Read("Colm:", ctx).Lines[0].Rod)
	assert.Equal(t, "run+run", said(Read("A and C alder 2220-2310", ctx)))
	assert.Equal(t, "landed", said(Read("Anna's fish landed 2241", ctx)))
	ctx.Chosen = map[int]int{0: 1}
	p := Read("2241 landed", ctx)
	require.Equal(t, "Colm=landed", said(p))
	assert.Equal(t, colm, p.Lines[0].Clauses[0].Readings[0].Entries[0].Base().Rod)
}

// Ensure that “in the Crook” is the run there where nothing else says when, and else the
// pool, also of a run.
func TestInThePool(t *testing.T) {
	ctx := larrick(t)
	ctx.Rod = anna
	ctx.Clock.Things = []Thing{{ID: geo.ID{0xd1}, Name: "The Crook", Run: true}, {ID: geo.ID{0xd2}, Name: "Alder Pool run 2", Run: true}}
	for text, want := range map[string]string{
		"half one pull in the crook":         "pull",
		"landed 1lb10 in the crook 2241":     "landed",
		"landed in the crook":                "landed",
		"pull in alder pool run 2":           "pull",
		"2330 till midnight in the crook":    "run",
		"came off in the crook during crook": "lost",
	} {
		p := Read(text, ctx)
		covered(t, p)
		require.Equal(t, want, said(p), "%s: %s", text, p.Lines[0].Clauses[0].Note.Reason)
	}
	k := Read("landed 1lb10 in the crook 2241", ctx).Lines[0].Clauses[0].Readings[0].Entries[0].(journal.Contact)
	assert.Equal(t, journal.Of(crook), k.Pool)
	assert.Equal(t, journal.ExactTime, k.When.Kind)
	k = Read("landed in the crook", ctx).Lines[0].Clauses[0].Readings[0].Entries[0].(journal.Contact)
	assert.Equal(t, journal.Within(geo.ID{0xd1}), k.When)
}

// Ensure that “alone” takes the other flies off the leader, that a rig of fewer flies than
// the one before is printed with it, and that elsewhere the word goes into the note.
func TestFlyAlone(t *testing.T) {
	ctx := larrick(t)
	ctx.Rod = anna
	p := Read("2200 point 1in slim dark dropper 3/4in full pale\n2230 point 2in full dark alone\nalder 2240-2250 alone", ctx)
	require.Equal(t, "rig; rig; run(alone)", said(p))
	first, second := p.Lines[0].Clauses[0].Readings[0].Entries[0], p.Lines[1].Clauses[0].Readings[0].Entries[0].(journal.Rig)
	assert.Equal(t, []journal.Mounted{{Position: 0, Fly: journal.Of(full2)}}, second.Flies)
	ctx.Entries = []journal.Entry{first}
	text, ok := Print(second, ctx)
	require.True(t, ok)
	assert.Equal(t, "Anna point 2 in full dark 22:30 alone", text)

	p = Read("2210 point 2in full dark, dropper 1in slim dark", ctx)
	require.Equal(t, "rig", said(p))
	assert.Equal(t, []journal.Mounted{{Position: 0, Fly: journal.Of(full2)}, {Position: 1, Fly: journal.Of(slim1)}},
		p.Lines[0].Clauses[0].Readings[0].Entries[0].(journal.Rig).Flies, "the 1 is of the inch, not of the dropper")

	within := journal.Contact{Head: journal.Head{ID: geo.ID{9}, Trip: ctx.Trip, Rod: anna, When: journal.Within(geo.ID{0xd1})}, Touch: journal.Boil}
	ctx.Clock.Things = []Thing{{ID: geo.ID{0xd1}, Name: "The Crook", Run: true}}
	within.When.Lo, within.When.Hi = instantOf(t, evening, "Europe/London", "22:00"), instantOf(t, evening, "Europe/London", "22:30")
	text, ok = Print(within, ctx)
	assert.True(t, ok, "%s: as it hangs in the journal, with its bounds", text)
}

// Ensure that a clause left a note by hand is one, without a reason, and nothing to what
// follows: a fish after a run so left does not hang on it.
func TestLeftANote(t *testing.T) {
	ctx := larrick(t)
	ctx.Rod = anna
	text := "alder 2220-2310, landed 1lb10"
	require.Equal(t, "run; landed", said(Read(text, ctx)))
	ctx.Chosen = map[int]int{0: AsNote}
	p := Read(text, ctx)
	assert.Equal(t, "note; landed lacks when", said(p))
	assert.Empty(t, p.Lines[0].Clauses[0].Note.Reason)
	assert.Equal(t, "alder 2220-2310", p.Lines[0].Clauses[0].Note.Note)
}

// Ensure that the fly on the leader follows from the rig written before, and that a
// change of one fly keeps the others.
func TestRigGoesOn(t *testing.T) {
	ctx := larrick(t)
	ctx.Rod = anna
	p := Read("2200 point 1in slim dark dropper 3/4in full pale leader 9ft\n2230 point 2in full dark\n2240 landed point\n2215 landed point", ctx)
	require.Equal(t, "rig; rig; landed; landed", said(p))
	entries, flies := p.Entries()
	require.Empty(t, flies)
	second := entries[1].(journal.Rig)
	assert.Equal(t, []journal.Mounted{{Position: 0, Fly: journal.Of(full2)}, {Position: 1, Fly: journal.Of(pale3)}}, second.Flies)
	assert.Equal(t, entries[0].(journal.Rig).Leader, second.Leader)
	assert.Equal(t, journal.Of(full2), entries[2].(journal.Contact).Fly)
	assert.Equal(t, journal.Of(slim1), entries[3].(journal.Contact).Fly, "the fly of that time, whatever the order of the notes")
}

// Ensure that a head of another night is told as that, and what follows is read in it.
func TestOtherNight(t *testing.T) {
	p := Read("Fri 3 July, Kirk Beat, Anna and Colm\nA landed 2241", larrick(t))
	require.NotNil(t, p.Lines[0].Head)
	assert.True(t, p.Lines[0].Head.Other)
	assert.False(t, p.Lines[0].Head.Beat.IsZero())
	e := p.Lines[1].Clauses[0].Readings[0].Entries[0].Base()
	assert.Equal(t, evening.Add(-1), p.Lines[1].Evening)
	assert.Equal(t, instantOf(t, evening.Add(-1), "Europe/London", "22:41"), e.When.Lo)
	assert.True(t, e.Trip.IsZero(), "it is not of the trip at hand")
}

// Ensure that whatever is typed nothing fails, no byte is lost, and all ends as
// entries or notes.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"A alder 2220-2310 first run\n2241 landed 1lb10", "Sat 4 July, Home Beat", "((", "tag", "\xff\xfe ½½ 1lb", "é, a - b; . ' \" °",
		"between 22:41 and", "about c. ~ 2250ish?", "1lb10 1lb10 1lb10", "lost off took touch rose clear lost off", "2241 ± 5", "leader leader point point", "note:", "ten to", "5 ft 6", "half ten to quarter past eleven alder",
		"from ten to eleven", "a quarter to midnightish ±5", "in the crook in alder 2241", "58F 2140 water f3", "A: \r\n2241 landed\r\n", "herling 10oz kept", "cloud 2/8 thin", "point 2in full dark alone", "after fish 3"} {
		f.Add(s)
	}
	ctx := larrick(f)
	f.Fuzz(func(t *testing.T, s string) {
		if len(s) > 300 {
			return
		}
		covered(t, Read(s, ctx))
	})
}

// Budget: 5 ms.
func BenchmarkRead200Lines(b *testing.B) {
	ctx := larrick(b)
	ctx.NewID = nil
	text := strings.Repeat("A alder 2220-2310 first run\nA 2241 landed 1lb10 dropper\nabout 2250 lost fish point\n2258 trees grey\nmoon up 0031\nA point 1in slim dark 0036\ncloud 6/8, wind SW 3, water 14C 2200\nwe sat on the bench and talked of other rivers\n", 25)
	for b.Loop() {
		Read(text, ctx)
	}
}
