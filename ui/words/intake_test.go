package words

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/gauge"
	"gloamline/journal/intake"
)

func intakeView(t *testing.T) IntakeView {
	zone, err := time.LoadLocation("Europe/London")
	assert.NoError(t, err)
	trip := journal.Trip{ID: journal.NewID(), Evening: journal.Date{Year: 2026, Month: 7, Day: 4}, Zone: "Europe/London"}
	file := &intake.File{Name: "night.gpx", Kind: intake.TrackFile, Fault: &intake.Fault{Line: 3, What: "the XML is not well formed"}}
	return IntakeView{Zone: zone, Beat: geo.Beat{Pools: []geo.Pool{{ID: geo.ID{1}, Name: "Alder Pool"}}},
		Batch: &intake.Batch{Log: journal.NewLog(trip, nil), Sources: []intake.Source{{File: file, Device: "watch"}}}}
}

// Ensure that every remark, question and conflict has its own words.
func TestIntakeWords(t *testing.T) {
	v := intakeView(t)
	at := time.Date(2026, 7, 4, 21, 34, 0, 0, time.UTC)
	for _, k := range intake.RemarkKinds {
		s := v.RemarkLine(v.Batch.Sources[0], intake.Remark{Kind: k, At: at, By: 90 * time.Second, Metres: 1234, Count: 2, Of: 3, Zone: "Europe/London"})
		assert.NotEqual(t, string(k), s)
		assert.Contains(t, s, " ", k)
	}
	for _, k := range []intake.QuestionKind{intake.WhoseTrack, intake.NoRods, intake.WhichZone, intake.GaugeZone, intake.Columns} {
		s := v.QuestionLines(intake.Question{Kind: k, Sources: []int{0}})
		assert.Contains(t, s[0], "night.gpx", k)
		assert.True(t, strings.Contains(s[0], "?"), s[0])
	}
	run := journal.Run{Head: journal.Head{ID: journal.NewID(), When: journal.Exact(at)}, Pool: geo.ID{1}, Until: journal.Of(journal.Exact(at.Add(41 * time.Minute)))}
	fish := journal.Contact{Head: journal.Head{When: journal.About(at, 0)}, Touch: journal.Lost}
	for k, written := range map[intake.ConflictKind]journal.Record{intake.RunOverlap: run, intake.SameFish: fish, intake.SamePhoto: journal.Photo{Head: fish.Head}, intake.OtherReadings: journal.Series{}} {
		s := v.ConflictLine(intake.Conflict{Kind: k, Written: written})
		assert.NotEqual(t, string(k), s)
	}
	v.Batch.Proposals = []intake.Proposal{{Key: "a", Record: run}}
	assert.Equal(t, "night.gpx gives: 22:34–23:15 run, Alder Pool, doubtful", v.ConflictLine(intake.Conflict{Kind: intake.TwoTracks, Rival: "a"}))
	assert.Len(t, intake.ConflictKinds, 5)
	assert.Equal(t, "written: 22:34–23:15 run, Alder Pool", v.ConflictLine(intake.Conflict{Kind: intake.RunOverlap, Written: run}))
	assert.Equal(t, "written: about 22:34 fish, came off", v.ConflictLine(intake.Conflict{Kind: intake.SameFish, Written: fish}))
}

// Ensure that runs are said with which it was and what makes them doubtful.
func TestProposalLine(t *testing.T) {
	v := intakeView(t)
	at := time.Date(2026, 7, 4, 21, 34, 0, 0, time.UTC)
	run := journal.Run{Head: journal.Head{When: journal.About(at, 0)}, Pool: geo.ID{1}, Until: journal.Of(journal.About(at.Add(41*time.Minute), 0))}
	assert.Equal(t, "22:34–23:15 run, Alder Pool, second run there", v.ProposalLine(intake.Proposal{Record: run, Confidence: 0.9, Visit: &intake.Visit{Nth: 2}}))
	assert.Equal(t, "22:34–23:15 run, Alder Pool, doubtful: it stayed in one place", v.ProposalLine(intake.Proposal{Record: run, Confidence: 0.4, Visit: &intake.Visit{Nth: 1, Stood: true}}))
}

// Ensure that a gauge is said as what it is.
func TestGaugeLine(t *testing.T) {
	v := intakeView(t)
	at := time.Date(2026, 7, 4, 21, 34, 0, 0, time.UTC)
	s := gauge.State{At: at, Level: 0.692, Slope: -0.0241, Peak: &gauge.Peak{}, SincePeak: 9 * time.Hour, Left: 0.32, Class: gauge.FallingFlood}
	assert.Equal(t, "at the gauge at 22:34: 0.69 m, falling flood, 9 h since the peak, 32 % of the rise left, 2.4 cm an hour down", v.GaugeLine(s))
	s.Left = -0.39
	assert.Contains(t, v.GaugeLine(s), "9 h since the peak, below where the rise began, 2.4")
	nan := math.NaN()
	s = gauge.State{At: at, Lagged: true, Slope: nan, Why: gauge.NoReading}
	assert.Equal(t, "at the gauge at 22:34, the lag taken off: 0.00 m, no reading near enough", v.GaugeLine(s))
}

// Ensure that offsets are said to the second.
func TestOffset(t *testing.T) {
	for d, want := range map[time.Duration]string{
		92 * time.Second: "+1 min 32 s", -time.Hour: "−1 h", 0: "0 s", 300 * time.Millisecond: "0 s",
		1024 * 7 * 24 * time.Hour: "+7168 days", 25 * time.Hour: "+1 day 1 h",
	} {
		assert.Equal(t, want, Offset(d))
	}
}
