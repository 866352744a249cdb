package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/units"
)

// scribbling is a night of Anna and Colm with one run of Anna's, and an empty line.
func scribbling(t *testing.T) (*kit, *Scribble) {
	k := newKit(t)
	k.night(true)
	k.add(journal.KindRun, "rod", "Anna", "when", "22:35", "until", "23:10", "pool", "Alder Pool")
	k.d.SetCursor(k.at("23:20"))
	return k, k.d.NewScribble()
}

// one is the only clause of the only line.
func one(t *testing.T, s *Scribble) ScribbleClause {
	t.Helper()
	require.Len(t, s.Lines(), 1)
	require.Len(t, s.Lines()[0].Clauses, 1)
	return s.Lines()[0].Clauses[0]
}

func (k *kit) entries() []journal.Entry {
	l, err := k.j.Night(k.d.Trip())
	require.NoError(k.t, err)
	return l.Sorted()
}

func (k *kit) changes() int {
	cs, err := k.j.Changes(0, 100000)
	require.NoError(k.t, err)
	return len(cs)
}

// Ensure that a line says what it would make, word by word and as a sentence, that Enter
// stores it as one change, and that undo takes it back.
func TestScribbleOneFish(t *testing.T) {
	k, s := scribbling(t)
	before := k.changes()
	s.Set("A 2241 landed 1lb10 dropper")
	c := one(t, s)
	assert.Equal(t, Settled, c.State)
	assert.Equal(t, []string{"22:41 Anna: 1 lb 10 oz, dropper; Alder Pool"}, c.Says)
	assert.Empty(t, c.Ways)
	var says []string
	for _, w := range s.Lines()[0].Words {
		if w.Says != "" {
			says = append(says, w.Text+"="+w.Says)
		}
	}
	assert.Equal(t, []string{"A=rod Anna", "2241=22:41", "landed=landed", "1lb10=1 lb 10 oz", "dropper=the first dropper"}, says)
	require.NotNil(t, s.Preview())
	assert.Equal(t, 1, s.Preview().Totals.Landed)
	assert.Zero(t, k.d.Night().Totals.Landed, "nothing is stored yet")
	assert.Equal(t, before, k.changes())

	require.NoError(t, s.Commit())
	assert.Empty(t, s.Text())
	assert.Equal(t, before+1, k.changes())
	assert.Equal(t, 1, k.d.Night().Totals.Landed)
	fish, ok := k.d.SelectedEntry().(journal.Contact)
	require.True(t, ok, "it is selected")
	assert.Equal(t, journal.Origin{How: "scribble"}, fish.From)
	assert.Equal(t, k.at("22:41"), fish.When.Lo)
	did, _ := k.j.CanUndo()
	assert.Equal(t, "add contact", did)
	require.NoError(t, k.d.Undo())
	assert.Len(t, k.entries(), 1)
}

// Ensure that what has several meanings is offered, that nothing is stored until one is
// chosen, and that a choice holds while the words stand and is forgotten with them.
func TestScribbleOffers(t *testing.T) {
	k, s := scribbling(t)
	s.Set("A lost point 2300")
	c := one(t, s)
	assert.Equal(t, Open, c.State)
	assert.Equal(t, []string{"hooked, came off", "the fly was lost", "leave it a note"}, c.Ways)
	assert.Equal(t, -1, c.Taken)
	assert.True(t, s.Unsettled())
	require.ErrorIs(t, s.Commit(), ErrUnfinished)
	require.Len(t, k.entries(), 1)

	require.True(t, s.Choose(c.At, 1))
	c = one(t, s)
	assert.Equal(t, Settled, c.State)
	assert.Equal(t, 1, c.Taken)
	require.IsType(t, journal.Rig{}, s.Made()[0])

	s.Set("trees grey 2258, A lost point 2300")
	cs := s.Lines()[0].Clauses
	require.Len(t, cs, 2)
	assert.Equal(t, []ClauseState{Settled, Settled}, []ClauseState{cs[0].State, cs[1].State}, "the choice holds for the same words")
	require.IsType(t, journal.Rig{}, s.Made()[1])

	s.Set("trees grey 2258, A lost point 2301")
	assert.Equal(t, Open, s.Lines()[0].Clauses[1].State, "other words are another matter")

	require.True(t, s.Choose(s.Lines()[0].Clauses[1].At, 2))
	c = s.Lines()[0].Clauses[1]
	assert.Equal(t, Kept, c.State)
	assert.Equal(t, "stays a note", c.Why)
	assert.Equal(t, 2, c.Taken)
	require.True(t, s.Choose(c.At, 0), "and can be taken back")
	require.IsType(t, journal.Contact{}, s.Made()[1])
	s.Reopen(s.Lines()[0].Clauses[1].At)
	assert.Equal(t, Open, s.Lines()[0].Clauses[1].State)
	assert.False(t, s.Choose(s.Lines()[0].Clauses[1].At, 7))
}

// Ensure that with two rods a fish of nobody's is offered to both, and that a line with
// a name alone says whose the next lines are.
func TestScribbleWhoseFish(t *testing.T) {
	k, s := scribbling(t)
	s.Set("2241 landed")
	assert.Equal(t, []string{"Anna", "Colm", "leave it a note"}, one(t, s).Ways)
	s.Set("Colm:")
	assert.Equal(t, "what follows is Colm’s", s.Lines()[0].Head)
	require.NoError(t, s.Commit())
	s.Set("2241 landed")
	require.Equal(t, Settled, one(t, s).State)
	assert.Equal(t, k.rod(1).ID, s.Made()[0].Base().Rod)
	s.ForgetRod()
	assert.Equal(t, Open, one(t, s).State)
	require.ErrorIs(t, k.d.NewScribble().Commit(), ErrUnfinished, "an empty line stores nothing")
}

// Ensure that a fish without a time may be put at the cursor or into a run of its rod,
// and that the text then says so.
func TestScribbleWithoutTime(t *testing.T) {
	k, s := scribbling(t)
	s.Set("A landed 2lb")
	c := one(t, s)
	assert.Equal(t, []string{"at 23:20, the cursor", "during Alder Pool", "leave it a note"}, c.Ways)
	assert.Equal(t, "When was “A landed 2lb”?", c.Why)
	require.True(t, s.Choose(c.At, 1))
	assert.Equal(t, "A landed 2lb during Alder Pool", s.Text())
	require.Equal(t, Settled, one(t, s).State)
	assert.Equal(t, journal.WithinTime, s.Made()[0].Base().When.Kind)

	s.Set("C landed 2lb")
	assert.Equal(t, []string{"at 23:20, the cursor", "leave it a note"}, one(t, s).Ways, "Colm has no run")
	require.True(t, s.Choose(0, 0))
	assert.Equal(t, "C landed 2lb 23:20", s.Text())
	assert.Equal(t, []string{"23:20 Colm: 2 lb; no run at this time, the pool is not known"}, one(t, s).Says)
	require.NoError(t, s.Commit())
	require.Len(t, k.entries(), 2)
}

// Ensure that a doubtful half of the day is asked about and the answer put into the text.
func TestScribbleHalfOfTheDay(t *testing.T) {
	_, s := scribbling(t)
	s.Set("C 9.40 pull")
	require.Equal(t, Settled, one(t, s).State, "soon after sunset there is no doubt")
	s.Set("C 7.30 pull")
	c := one(t, s)
	require.Equal(t, Open, c.State)
	assert.Equal(t, []string{"19:30 in the evening", "07:30 in the morning", "leave it a note"}, c.Ways)
	require.True(t, s.Choose(c.At, 0))
	assert.Equal(t, "C 19:30 pull", s.Text())
	assert.Equal(t, Settled, one(t, s).State)
}

// Ensure that a fly that is in no box is made in the same change, and goes with it.
func TestScribbleNewFly(t *testing.T) {
	k, s := scribbling(t)
	flies := len(all[journal.Fly](t, k.j))
	s.Set("A point 2in full dark 2315, dropper 2in full dark")
	s.Set("A point 2in full dark 2315")
	assert.Equal(t, []string{"23:15 Anna: point 2 in full dark", "a new fly: 2 in full dark"}, one(t, s).Says)
	require.NoError(t, s.Commit())
	require.Len(t, all[journal.Fly](t, k.j), flies+1)
	did, _ := k.j.CanUndo()
	assert.Equal(t, "add rig", did)
	require.NoError(t, k.d.Undo())
	assert.Len(t, all[journal.Fly](t, k.j), flies)
	assert.Len(t, k.entries(), 1)

	s.Set("A point pale 2315")
	assert.Equal(t, []string{"the fly ½ in full pale", "a new fly, pale", "leave it a note"}, one(t, s).Ways)
}

// Ensure that what cannot be read stays a note with the reason, in the journal too.
func TestScribbleNote(t *testing.T) {
	k, s := scribbling(t)
	s.Set("zorble the grumph 2310")
	c := one(t, s)
	assert.Equal(t, Kept, c.State)
	assert.Equal(t, "stays a note: too little of it could be read", c.Why)
	require.NoError(t, s.Commit())
	n, ok := k.d.SelectedEntry().(journal.Note)
	require.True(t, ok)
	assert.Equal(t, "zorble the grumph 2310", n.Note)
	assert.Equal(t, "too little of it could be read", n.Reason)
	assert.Equal(t, k.at("23:10"), n.When.Lo)
}

// Ensure that what the journal would refuse is said at the words concerned before
// anything is stored, and holds back nothing but itself from the preview.
func TestScribbleRefused(t *testing.T) {
	k, s := scribbling(t)
	s.Set("A flat 2300-2330\nC 2310 pull")
	ls := s.Lines()
	require.Equal(t, Wrong, ls[0].Clauses[0].State)
	assert.Contains(t, ls[0].Clauses[0].Why, "Alder Pool")
	assert.Equal(t, Settled, ls[1].Clauses[0].State)
	assert.NotEmpty(t, ls[1].Clauses[0].Says)
	require.ErrorIs(t, s.Commit(), ErrUnfinished)
	require.Len(t, k.entries(), 1)
	s.LeaveOut(0, true)
	require.NoError(t, s.Commit())
	require.Len(t, k.entries(), 2)
}

// Ensure that a page is stored as one change, that a fish in it hangs on the run of its
// line, and that leaving the run out leaves the fish with a question.
func TestScribblePage(t *testing.T) {
	k, s := scribbling(t)
	before := k.changes()
	s.Set("Sat 4 July, Home Beat\n\nC: \ncauldron half ten to ten past eleven, landed 1lb10\n2300 dropped one, point\r\nowl on the far bank\n2320 colour gone\n")
	entries, notes, open, off := s.Counts()
	assert.Equal(t, []int{4, 1, 1, 0}, []int{entries, notes, open, off})
	ls := s.Lines()
	require.Len(t, ls, 7)
	assert.Equal(t, "this night", ls[0].Head)
	assert.True(t, ls[1].Blank)
	assert.Equal(t, "2300 dropped one, point", ls[4].Text)
	require.ErrorIs(t, s.Commit(), ErrUnfinished)
	require.True(t, ls[6].Open())

	s.LeaveOut(3, true)
	_, _, open, off = s.Counts()
	assert.Equal(t, []int{1, 1}, []int{open, off})
	s.LeaveOut(3, false)
	require.True(t, s.Choose(s.Lines()[6].Clauses[0].At, 0))
	require.NoError(t, s.Commit())
	assert.Equal(t, before+1, k.changes())
	var run journal.Run
	for _, e := range k.entries() {
		if r, ok := e.(journal.Run); ok && r.Rod == k.rod(1).ID {
			run = r
		}
	}
	require.Equal(t, k.at("22:30"), run.When.Lo)
	anchored := 0
	for _, e := range k.entries() {
		for _, a := range e.Base().When.Anchors {
			if a == run.ID {
				anchored++
			}
		}
	}
	assert.Equal(t, 1, anchored)
	did, _ := k.j.CanUndo()
	assert.Equal(t, "scribble", did)
	require.NoError(t, k.d.Undo())
	assert.Len(t, k.entries(), 1)
	assert.Equal(t, k.rod(1).ID, s.Rod(), "the page ended with Colm")
}

// Ensure that lines of another night are told and not stored in this one.
func TestScribbleOtherNight(t *testing.T) {
	k, s := scribbling(t)
	s.Set("Fri 3 July\nA landed 2241\nSat 4 July\nA 2242 pull")
	ls := s.Lines()
	assert.Equal(t, Elsewhere, ls[1].Clauses[0].State)
	assert.Contains(t, ls[1].Clauses[0].Why, "Fri 3")
	require.NoError(t, s.Commit())
	require.Len(t, k.entries(), 2)
	assert.Equal(t, journal.Pull, k.d.SelectedEntry().(journal.Contact).Touch)
}

// Ensure that bare numbers are read in the units preferred.
func TestScribbleUnits(t *testing.T) {
	k, s := scribbling(t)
	p := k.d.Prefs()
	p.Fly = units.Millimetre
	k.d.SetPrefs(p)
	s.Set("A point 20 slim dark 2315")
	require.NotEmpty(t, s.Lines())
	for _, f := range s.flies {
		assert.Equal(t, units.LengthOf(20, units.Millimetre), f.Dresses[0].Length.Or(units.Length{}))
	}
}

// Ensure that without a night nothing is read and nothing fails.
func TestScribbleNoNight(t *testing.T) {
	k := newKit(t)
	s := k.d.NewScribble()
	s.Set("2241 landed")
	assert.Empty(t, s.Lines())
	assert.Error(t, s.Commit())
	assert.False(t, s.Choose(0, 0))
	s.LeaveOut(0, true)
}
