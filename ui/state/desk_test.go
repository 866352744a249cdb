package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/words"
)

// written is a night with two runs and a fish in each.
func written(t *testing.T) (*kit, []journal.Entry) {
	k := newKit(t)
	k.night(true)
	return k, []journal.Entry{
		k.add(journal.KindRun, "rod", "Anna", "when", "22:30", "until", "23:10", "pool", "Alder Pool"),
		k.fish(journal.Landed, "rod", "Anna", "when", "22:50"),
		k.add(journal.KindRun, "rod", "Colm", "when", "23:20", "until", "23:50", "pool", "Long Flat"),
		k.fish(journal.Lost, "rod", "Colm", "when", "about 23:40"),
	}
}

func TestCursor(t *testing.T) {
	k, _ := written(t)
	d := k.d
	require.NoError(t, d.Open(d.Trip()))
	assert.Equal(t, k.at("23:50"), d.Cursor(), "a night opens at the last thing logged")
	d.SetCursor(k.at("22:30"))
	var seen []string
	for d.NextThing(+1) {
		seen = append(seen, d.Cursor().In(d.Night().Zone).Format("15:04"))
	}
	assert.Equal(t, []string{"22:50", "23:10", "23:20", "23:40", "23:50"}, seen)
	assert.False(t, d.NextThing(+1))
	assert.True(t, d.NextThing(-1))
	assert.Equal(t, k.at("23:40"), d.Cursor())

	d.SetCursor(k.at("23:40").Add(40*time.Second + 300*time.Millisecond))
	assert.Equal(t, k.at("23:40").Add(40*time.Second), d.Cursor())
	d.StepCursor(1)
	assert.Equal(t, k.at("23:41"), d.Cursor())
	d.SetCursor(k.at("23:40").Add(40 * time.Second))
	d.StepCursor(-1)
	assert.Equal(t, k.at("23:40"), d.Cursor())
	d.StepCursor(-10)
	assert.Equal(t, k.at("23:30"), d.Cursor())

	d.SetCursor(d.Night().Start.Add(-time.Hour))
	assert.Equal(t, d.Night().Start, d.Cursor())
	d.SetCursor(d.Night().End.Add(time.Hour))
	assert.Equal(t, d.Night().End, d.Cursor())
	require.True(t, d.ToGrey())
	assert.Equal(t, d.Cursor(), d.Cursor().Truncate(time.Minute), "a full minute")
	assert.WithinRange(t, d.Cursor(), d.Night().Grey.At, d.Night().Grey.At.Add(time.Minute))
	assert.Equal(t, timeline.TreesGrey, d.Night().Rung(d.Cursor(), geo.ID{}))
	assert.Equal(t, "trees grey "+words.Clock(d.Cursor(), d.Night().Zone), words.GreyMark(d.Night(), d.Night().Grey.At), "the mark names that minute")
}

func TestPlay(t *testing.T) {
	k, _ := written(t)
	d := k.d
	from, to := d.StripWindow()
	d.SetCursor(to)
	d.Play(true)
	assert.True(t, d.Playing())
	assert.Equal(t, from, d.Cursor(), "from the start when at the end")
	d.Play(false)
	d.SetCursor(k.at("23:50"))
	d.Play(true)
	assert.Equal(t, from, d.Cursor(), "and where nothing more was logged")
	d.Advance(time.Second)
	assert.Equal(t, from.Add(10*time.Minute), d.Cursor())
	d.Advance(time.Hour)
	assert.Equal(t, to, d.Cursor())
	assert.False(t, d.Playing())
	d.Advance(time.Second)
	assert.Equal(t, to, d.Cursor())
}

// Ensure that a card stops the night that is played, and starts with a full minute
// wherever the cursor stood.
func TestCardStopsPlaying(t *testing.T) {
	k, _ := written(t)
	k.d.SetCursor(k.at("22:00"))
	k.d.Play(true)
	k.d.Advance(1095 * time.Millisecond) // 22:10:57
	require.NoError(t, k.d.Command("add.fish").Run())
	assert.False(t, k.d.Playing())
	assert.Equal(t, "22:10", field1(t, k.d.Card(), "when").Value)
	k.d.Advance(time.Second)
	assert.Equal(t, "22:10", field1(t, k.d.Card(), "when").Value)
	k.d.Play(true)
	assert.False(t, k.d.Playing(), "nor is it played under a card")
	k.d.CloseCard()
	require.NoError(t, k.d.Command("night.new").Run())
	require.NotNil(t, k.d.Card())
}

// Ensure that selecting moves the cursor and picks out the pool, and that each
// selects what comes next in the order of the night.
func TestSelection(t *testing.T) {
	k, es := written(t)
	d := k.d
	d.Select(es[3].Ref())
	assert.Equal(t, es[3].Ref(), d.Selected())
	assert.Equal(t, k.at("23:40"), d.Cursor(), "the middle of about 23:40")
	assert.Equal(t, k.pool("Long Flat").ID, d.Pool(), "that of the run it fell in")
	assert.Equal(t, k.rod(1).ID, d.Rod())

	d.SelectPool(k.pool("The Cauldron").ID)
	assert.Equal(t, k.pool("The Cauldron").ID, d.Pool())
	d.Select(es[1].Ref())
	assert.Equal(t, k.pool("Alder Pool").ID, d.Pool(), "a selection lets go of the pool by hand")
	d.Select(journal.Ref{Kind: PoolKind, ID: k.pool("The Cauldron").ID})
	assert.Equal(t, k.pool("The Cauldron").ID, d.Pool())
	assert.Zero(t, d.Selected(), "one thing at a time: Delete must mean what is picked out")
	d.SelectPool(geo.NewID())
	assert.Equal(t, k.pool("Alder Pool").ID, d.Pool(), "no pool of this beat")

	d.Select(journal.Ref{})
	assert.Zero(t, d.Selected())
	d.SetCursor(k.at("22:40"))
	assert.Equal(t, k.pool("Alder Pool").ID, d.Pool(), "that of the run at the cursor")
	assert.Equal(t, k.rod(0).ID, d.Rod())
	d.SetCursor(k.at("23:15"))
	assert.Zero(t, d.Pool())
	assert.Zero(t, d.Rod())
	require.True(t, d.SelectNext(+1))
	assert.Equal(t, es[2].Ref(), d.Selected())
	require.True(t, d.SelectNext(-1))
	assert.Equal(t, es[1].Ref(), d.Selected())
	require.True(t, d.SelectNext(-1))
	assert.False(t, d.SelectNext(-1))
	assert.Equal(t, es[0].Ref(), d.Selected())
	d.Select(journal.Ref{})
	d.SetCursor(k.at("23:45"))
	require.True(t, d.SelectNext(-1))
	assert.Equal(t, es[3].Ref(), d.Selected())

	d.Select(journal.Ref{Kind: journal.KindRun, ID: journal.NewID()})
	assert.Zero(t, d.Selected(), "nothing of that identity")
}

// Ensure that subscribers hear once per act what changed, and that a change made
// elsewhere rebuilds the night only if it can show in it.
func TestNews(t *testing.T) {
	k, es := written(t)
	var heard []What
	k.d.OnChange(func(w What) { heard = append(heard, w) })
	take := func() []What { h := heard; heard = nil; return h }

	k.d.Select(es[0].Ref())
	h := take()
	require.Len(t, h, 1)
	assert.True(t, h[0].Has(Selection) && h[0].Has(Cursor) && !h[0].Has(NightOpen))
	k.d.Select(es[0].Ref())
	assert.Empty(t, take(), "nothing new")
	k.d.SetLook("lamp")
	k.d.SetLook("neon")
	assert.Equal(t, []What{Look}, take())
	assert.Equal(t, "lamp", k.d.Look())

	k.fish(journal.Landed, "rod", "Anna", "when", "23:00")
	h = take()
	last := h[len(h)-1]
	assert.True(t, last.Has(NightOpen) && last.Has(Nights) && last.Has(Selection) && last.Has(Can))

	night := k.d.Night()
	_, err := k.j.Log(journal.HouseRule{ID: journal.NewID(), Words: "short before grey"})
	require.NoError(t, err)
	assert.False(t, night == k.d.Night(), "what lies off a house rule shows in a night")
	assert.Equal(t, []What{Can | NightOpen | Cursor}, take())
	night = k.d.Night()
	_, err = k.j.Log(journal.Box{ID: journal.NewID(), Name: "Small", Use: "night"})
	require.NoError(t, err)
	assert.True(t, night == k.d.Night(), "a box does not")
	assert.Equal(t, []What{Can}, take())
	assert.Equal(t, "Anna", k.d.NightRow(0).Party[0])
	anna := k.anna
	anna.Name = "Anne"
	_, err = k.j.Amend(anna)
	require.NoError(t, err)
	assert.NotSame(t, night, k.d.Night())
	assert.Equal(t, "Anne", k.d.Night().Rods[0].Name)
	assert.Equal(t, "Anne", k.d.NightRow(0).Party[0])
}

func TestNightsList(t *testing.T) {
	k, _ := written(t)
	first := k.d.Trip()
	blank, err := k.d.NewNightCard()
	require.NoError(t, err)
	blank.Set("evening", "6 July 2026")
	k.now = k.now.AddDate(0, 0, 5)
	blank.Set("evening", "6 July 2026")
	blank.Set("rods.0.person", "Anna")
	require.NoError(t, blank.Commit())
	second := k.d.Trip()
	require.NotEqual(t, first, second)
	assert.True(t, k.d.NightRow(0).Empty)
	assert.False(t, k.d.NightRow(0).Blank, "nobody has fished yet")
	k.add(journal.KindRun, "when", "23:00", "until", "23:30", "pool", "Alder Pool")

	require.Equal(t, 2, k.d.NightCount())
	row := k.d.NightRow(0)
	assert.Equal(t, second, row.Trip, "the latest first")
	assert.True(t, row.Blank && row.Open && !row.Empty)
	assert.False(t, k.d.NightRow(1).Blank)
	assert.Equal(t, NightRow{}, k.d.NightRow(2))
	assert.Equal(t, NightRow{}, k.d.NightRow(-1))

	require.NoError(t, k.d.NextNight(-1))
	assert.Equal(t, first, k.d.Trip())
	require.NoError(t, k.d.NextNight(-1))
	assert.Equal(t, first, k.d.Trip(), "there is none before")
	require.NoError(t, k.d.NextNight(+1))
	assert.Equal(t, second, k.d.Trip())

	require.NoError(t, k.d.RemoveNight())
	assert.Nil(t, k.d.Night())
	assert.Zero(t, k.d.Trip())
	assert.Equal(t, 1, k.d.NightCount())
	require.NoError(t, k.d.Undo())
	assert.Equal(t, second, k.d.Trip(), "undo shows where it was")
	assert.Len(t, k.d.Night().Log.Entries, 1)

	assert.Equal(t, journal.NotFound, journal.KindOf(k.d.Open(journal.NewID())))
	assert.Equal(t, second, k.d.Trip(), "a night that is not there leaves the desk as it was")
}

func TestStripWindow(t *testing.T) {
	k, _ := written(t)
	d, n := k.d, k.d.Night()
	from, to := d.StripWindow()
	assert.Equal(t, []time.Time{n.From, n.To}, []time.Time{from, to})
	at := k.at("23:00")
	share := func() float64 {
		from, to := d.StripWindow()
		return float64(at.Sub(from)) / float64(to.Sub(from))
	}
	was := share()
	d.ZoomStrip(0.5, at)
	assert.InDelta(t, was, share(), 1e-9, "the instant stays where it is")
	assert.False(t, d.Fitted())
	d.ZoomStrip(1e-9, at)
	from, to = d.StripWindow()
	assert.Equal(t, 10*time.Minute, to.Sub(from))
	d.PanStrip(-100 * time.Hour)
	from, to = d.StripWindow()
	assert.Equal(t, []time.Time{n.Start, n.Start.Add(10 * time.Minute)}, []time.Time{from, to})
	d.PanStrip(100 * time.Hour)
	_, to = d.StripWindow()
	assert.Equal(t, n.End, to)
	d.ZoomStrip(1e9, time.Time{})
	from, to = d.StripWindow()
	assert.Equal(t, []time.Time{n.Start, n.End}, []time.Time{from, to})
	d.FitStrip()
	assert.True(t, d.Fitted())

	d.SetSketch(SketchView{Zoom: 99})
	assert.Equal(t, float64(MaxZoom), d.Sketch().Zoom)
	d.SetSketch(SketchView{Zoom: 0.1})
	assert.Equal(t, wholeBeat, d.Sketch())
}

// Ensure that a desk without a night does nothing and fails at nothing.
func TestNoNight(t *testing.T) {
	k := newKit(t)
	for _, c := range k.d.Commands() {
		if c.Enabled() && c.ID != "edit.undo" {
			require.NoError(t, c.Run(), c.ID)
		}
	}
	k.d.CloseCard()
	k.d.SetCursor(k.now)
	k.d.ZoomStrip(2, time.Time{})
	k.d.PanStrip(time.Hour)
	k.d.Select(journal.Ref{Kind: journal.KindRun, ID: journal.NewID()})
	k.d.Advance(time.Second)
	assert.Nil(t, k.d.Night())
	assert.Zero(t, k.d.Cursor())
}
