package scene_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

// texts lists what a picture says.
func texts(l *draw.List) []string {
	var out []string
	for _, b := range l.TextBoxes() {
		out = append(out, b.Text.S)
	}
	return out
}

// bold lists the texts in bold: numbers of contacts among them, not those of axes.
func bold(l *draw.List) []string {
	var out []string
	for _, b := range l.TextBoxes() {
		if b.Text.Font.Weight == draw.Bold {
			out = append(out, b.Text.S)
		}
	}
	return out
}

func countHits(s scene.Scene, k journal.Kind) map[journal.ID]int {
	out := map[journal.ID]int{}
	for _, h := range s.Hits {
		if h.Ref.Kind == k {
			out[h.Ref.ID]++
		}
	}
	return out
}

// Ensure that header, strip, sketch, log and page tell of the same fish: each
// contact once in each, under the same number, and the totals of the header are
// those of the marks.
func TestCountsAgree(t *testing.T) {
	for _, n := range demoNights(t) {
		night := n.Log.Trip.Evening.String()
		logged := map[journal.Touch]int{}
		for _, e := range n.Log.Entries {
			if c, ok := e.(journal.Contact); ok {
				logged[c.Touch]++
			}
		}
		want := timeline.Totals{
			Landed: logged[journal.Landed], Lost: logged[journal.Lost],
			Touches: logged[journal.Pluck] + logged[journal.Pull],
			Shows:   logged[journal.Boil] + logged[journal.Follow],
		}
		assert.Equal(t, [4]int{want.Landed, want.Lost, want.Touches, want.Shows},
			[4]int{n.Totals.Landed, n.Totals.Lost, n.Totals.Touches, n.Totals.Shows}, night)
		header := strings.Join(words.Header(n, words.Prefs{}), " ")
		if want.Landed > 0 {
			assert.Contains(t, header, fmt.Sprintf("%d landed", want.Landed), night)
		}

		strip := scene.Strip(n, draw.Size{W: 1180, H: 440}, scene.Dusk, scene.StripView{})
		sketch := scene.Sketch(n, draw.Size{W: 760, H: 350}, scene.Dusk, scene.SketchView{})
		log := scene.Log(n, 400, scene.Dusk, scene.LogView{})
		var page, numbers []string
		for _, p := range scene.Page(n, scene.Paper, scene.PageView{}) {
			page = append(page, texts(p)...)
			numbers = append(numbers, bold(p)...)
		}
		onStrip, onSketch, inLog := countHits(strip, journal.KindContact), countHits(sketch, journal.KindContact), countHits(log, journal.KindContact)
		assert.Len(t, onStrip, len(n.Contacts), night)
		assert.Len(t, inLog, len(n.Contacts), night)
		for _, c := range n.Contacts {
			assert.Equal(t, 2, onStrip[c.ID], "%s: contact %d on the strip, on its light and in its lane", night, c.N)
			assert.Equal(t, 1, inLog[c.ID], "%s: contact %d in the log", night, c.N)
			if c.HasPool {
				assert.Equal(t, 1, onSketch[c.ID], "%s: contact %d on the sketch", night, c.N)
			}
			number := words.ContactNumber(n, c)
			for where, list := range map[string][]string{"strip": bold(strip.List), "sketch": bold(sketch.List), "log": bold(log.List)} {
				if where == "sketch" && !c.HasPool {
					continue
				}
				most := 1
				if where == "strip" {
					most = 2 // in the lane where there is room
				}
				assert.GreaterOrEqual(t, times(list, number), 1, "%s: number %s on the %s", night, number, where)
				assert.LessOrEqual(t, times(list, number), most, "%s: number %s on the %s", night, number, where)
			}
			assert.GreaterOrEqual(t, times(numbers, number), 3, "%s: number %s on the page stands by sketch, strip and log", night, number)
			assert.LessOrEqual(t, times(numbers, number), 4, "%s: number %s on the page stands by sketch, strip, lane and log", night, number)
			assert.True(t, strings.Contains(strings.Join(page, " "), words.LightShort(c, words.Prefs{})), "%s: the light at %s", night, number)
		}
	}
}

func times(list []string, s string) int {
	n := 0
	for _, v := range list {
		if v == s {
			n++
		}
	}
	return n
}

// Ensure that every run stands in the log with its heading, blank ones too, and
// on the strip with its bracket.
func TestRunsStandEverywhere(t *testing.T) {
	blanks := 0
	for _, n := range demoNights(t) {
		log := scene.Log(n, 400, scene.Dusk, scene.LogView{})
		strip := scene.Strip(n, draw.Size{W: 1180, H: 440}, scene.Dusk, scene.StripView{})
		said := times(texts(log.List), words.BlankRun())
		require.Equal(t, n.Totals.Blank, said, n.Log.Trip.Evening)
		blanks += said
		for _, rod := range n.Rods {
			for _, run := range rod.Runs {
				_, ok := log.Box(run.Run.Ref())
				assert.True(t, ok)
				_, ok = strip.Box(run.Run.Ref())
				assert.True(t, ok)
				assert.Contains(t, texts(log.List), words.RunHeading(n, run, rod))
			}
		}
	}
	require.Positive(t, blanks, "the demo has blank runs")
}
