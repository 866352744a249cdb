package words

import (
	"fmt"
	"math"
	"strings"
	"time"

	"gloamline/journal"
	seasons "gloamline/timeline/season"
)

// SeasonRoomTitle heads the room of a season.
func SeasonRoomTitle() string { return "Season" }

// SeasonOverview heads its first card; SeasonOverviewShort stands in the list of cards.
func SeasonOverview() string      { return "What it all comes to" }
func SeasonOverviewShort() string { return "All of it" }

// SeasonPageTitle heads a page of it, SeasonPageHint is said below one to be saved.
func SeasonPageTitle(nights string) string { return SeasonRoomTitle() + ": " + nights }
func SeasonPageHint() string {
	return "Saved as it is shown, with which nights it counts. The ending says how: PDF for print, PNG or SVG for a screen. It may name pools: think before giving it away."
}

// SeasonAll says that no night was left out, where a filter would be said.
func SeasonAll() string { return "all nights" }

// SeasonMade says what the figures are made from, under the title and on every export.
func SeasonMade(v seasons.View, filter string) string {
	if filter == "" {
		filter = SeasonAll()
	}
	return capital(filter) + "; counted: " + MeasureName(v.Measure) + "."
}

// SeasonReading says how far the nights are read.
func SeasonReading(done, of int) string {
	return fmt.Sprintf("Reading nights: %d of %d. Figures stand here when all are read.", done, of)
}

// SeasonEmpty stands where no night can be shown.
func SeasonEmpty(nights int) string {
	if nights == 0 {
		return "No nights yet. Once some are written, what they tell together stands here, hours beside fish."
	}
	return "No night is let through. Choose others at the left; 0 takes all of them."
}

// SeasonLeft says that nights are in no figure.
func SeasonLeft(n int) string {
	return number(n, "night", "nights") + " could not be set in their light and are in no figure; the list of nights says why."
}

// SeasonHint is the footer's line.
func SeasonHint() string {
	return "Up and Down go through the questions, Enter opens one, S shows the tests behind it, E saves its tables, Ctrl+P its page. F6 goes to the list."
}

// QuestionShort is a question in the list of cards.
func QuestionShort(n int) string {
	return map[int]string{
		0: SeasonOverviewShort(), 1: "How much light", 2: "First hour of dark", 3: "Clock or light", 4: "Moon over the pool", 5: "Length against light", 6: "House rules",
		7: "Colour, bulk, tone", 8: "Two flies up", 9: "Surface lure", 10: "Long in a flood", 11: "After no response", 12: "All to one size",
		13: "Hooks", 14: "Pools", 15: "Part of the pool", 16: "Resting a pool", 17: "First run or second", 18: "Temperature", 19: "Colour and level",
		20: "Start and stop", 21: "Sizes and ages", 22: "Follow to net", 23: "Nights alike", 24: "Clients and others", 25: "What was planned", 26: "What is missing",
	}[n]
}

// Headings of the columns of a season's tables.
func SeasonNights() string { return "nights" }
func SeasonFish() string   { return "fish" }

// SeasonSo heads how many of a table of shares are so, where they are not fish.
func SeasonSo() string { return "yes" }

func SeasonRuns() string   { return "runs" }
func SeasonAnHour() string { return "an hour" }
func SeasonOf() string     { return "of" }

// SeasonHours prints hours with one digit.
func SeasonHours(h float64) string { return fmt.Sprintf("%.1f", h) }

// SeasonOn prints on how many nights hours lie.
func SeasonOn(nights int) string { return number(nights, "night", "nights") }

// SeasonCount prints a number of nights or runs.
func SeasonCount(n int) string { return fmt.Sprint(n) }

// SeasonShareOnly is a share with its interval, without its counts; what it takes if there
// are too few.
func SeasonShareOnly(r seasons.Row) string {
	switch {
	case r.Share == nil:
		return ""
	case !r.Enough:
		return fmt.Sprintf("not enough yet: it takes %.0f", seasons.MinFish)
	}
	return fmt.Sprintf("%.0f %% (%.0f to %.0f)", 100*r.Share.Value, 100*r.Share.Interval.Lo, 100*r.Share.Interval.Hi)
}

// SeasonTick prints a mark of an axis of rates.
func SeasonTick(v float64) string { return fmt.Sprintf("%.3g", v) }

// SeasonRowRate is SeasonRate where a table as a whole may have too little: then no
// rate is shown, but what a blank may hide is.
func SeasonRowRate(t *seasons.Table, r seasons.Row) string {
	if t.Verdict == seasons.NotEnough && r.Hours > 0 && r.Fish > 0 {
		return "not enough yet"
	}
	return SeasonRate(r)
}

// SeasonCell is what a cell of a grid holds: fish in hours.
func SeasonCell(r seasons.Row) (fish, hours string) {
	f := count(r.Fish) + " fish"
	return f, fmt.Sprintf("%.1f h", r.Hours)
}

// SeasonShort says how far the records are from enough.
func SeasonShort(s seasons.Short) string {
	return fmt.Sprintf("So far %s with enough hours and nights, and %s fish.", number(s.Rows, "row", "rows"), count(s.Fish))
}

// GridKey says how a grid is read.
func GridKey(rules bool) string {
	s := "The stronger the shade, the more fish an hour, drawn toward the others; no shade: not enough yet."
	if rules {
		s += " Ruled: off a house rule."
	}
	return s
}

// ApartLine says what of a table belongs to no row, and what is in no rate.
func ApartLine(t *seasons.Table) string {
	var parts []string
	if t.Apart >= 0.05 {
		parts = append(parts, count(t.Apart)+" fish belong to no row, since what it asks is not known of them")
	}
	if t.NoHours >= 0.05 {
		parts = append(parts, count(t.NoHours)+" came outside every run and are in no rate")
	}
	if len(parts) == 0 {
		return ""
	}
	return capital(join("; ", parts)) + "."
}

// FoldTitle is the line under a card that shows or hides the tests.
func FoldTitle(open bool) string {
	if open {
		return "Hide the tests"
	}
	return "The tests behind it"
}

// PairInFull compares two rows, for the fold.
func PairInFull(t *seasons.Table, p seasons.Pair) string {
	a, b := p.A, p.B
	if r := t.Row(p.A); r != nil {
		a = RowLabel(t, *r)
	}
	if r := t.Row(p.B); r != nil {
		b = RowLabel(t, *r)
	}
	ratio := fmt.Sprintf("ratio of rates %s (%s)", rate(p.Ratio.Value), between(p.Ratio.Interval, rate))
	if v := p.Ratio.Value; math.IsNaN(v) || math.IsInf(v, 0) {
		ratio = fmt.Sprintf("no fish in the second; ratio of rates %s", between(p.Ratio.Interval, rate))
	}
	return fmt.Sprintf("%s against %s: %s; p %s, corrected by Holm for %s: %s", a, b, ratio, pValue(p.Ratio.P), number(p.Looked, "pair looked at", "pairs looked at"), pValue(p.Holm))
}

// PriorInFull says toward what the rates of a table are drawn, for the fold.
func PriorInFull(t *seasons.Table) string {
	if t.Prior == nil || t.Kind != seasons.Rates {
		return ""
	}
	p := t.Prior
	switch {
	case p.Few:
		return fmt.Sprintf("%s: too few rows with hours to say how they scatter; mean %s an hour", TableTitle(t), rate(p.Mean))
	case p.Pooled:
		return fmt.Sprintf("%s: rows scatter no more than chance makes them; drawn wholly to the mean of %s an hour", TableTitle(t), rate(p.Mean))
	}
	return fmt.Sprintf("%s: drawn toward the mean of %s an hour as if by %.0f h more (gamma-Poisson, maximum likelihood)", TableTitle(t), rate(p.Mean), p.Hours)
}

// ScatterInFull says whether nights differ more than chance makes them, for the fold.
func ScatterInFull(s *seasons.Season) string {
	if s.Scatter == nil {
		return ""
	}
	out := fmt.Sprintf("fish scatter over nights %.1f times as much as chance makes them (p %s)", s.Scatter.Ratio, pValue(s.Scatter.P))
	if s.Few {
		out += "; with so few nights the interval of resampled nights is too narrow itself"
	}
	return out
}

// ClockBand is a band of the local clock, quarters of an hour after noon.
func ClockBand(from, to int) string {
	at := func(q int) string { return fmt.Sprintf("%02d:%02d", (12+q/4)%24, q%4*15) }
	return at(from) + " to " + at(to)
}

// DarkBand is a band of light, tenths of a decade darker than grey trees.
func DarkBand(from, to int) string {
	edge := func(t int) (string, string) {
		v := math.Pow(10, math.Abs(float64(t))/10)
		n := fmt.Sprintf("%.2g", v)
		if v >= 10 { // two digits, which is more than light is known to
			p := math.Pow(10, math.Floor(math.Log10(v))-1)
			n = fmt.Sprintf("%.0f", math.Round(v/p)*p)
		}
		switch {
		case t < 0:
			return n, "lighter"
		case t > 0:
			return n, "darker"
		}
		return "", "trees grey"
	}
	a, sideA := edge(from)
	b, sideB := edge(to)
	switch {
	case a != "" && b != "" && sideA == sideB:
		return a + " to " + b + " times " + sideA
	case a == "":
		return sideA + " to " + b + " times " + sideB
	case b == "":
		return a + " times " + sideA + " to " + sideB
	}
	return a + " times " + sideA + " to " + b + " times " + sideB
}

// AxisTitles head the two ways to cut the hours.
func ClockAxisTitle() string { return "By the clock" }
func LightAxisTitle() string {
	return "By the light on the pool, against grey trees"
}

// RelativeKey says what the bars of the two ways are.
func RelativeKey() string {
	return "Height: fish an hour against the first band, each night having its own level. Bands hold about equal hours."
}

// DarknessLine is DarknessSentence where nothing else says what it is about.
func DarknessLine(d seasons.Darkness) string { return "Trees grey, " + DarknessSentence(d) }

// DarknessTitle heads the picture of one's own darkness, DarknessKey says how it is read.
func DarknessTitle() string { return "When the trees go grey, by what was logged" }
func DarknessKey() string {
	return fmt.Sprintf("A dot: a moment at which somebody noted it; hollow: left out, since no cloud was noted or it lies far off. The bar: how well the light is known; the line: the light that counts. Beats by the open sky, pools by the light on them; a pool has its own from %d moments on, till then that of all of the beat's.", seasons.OwnFrom)
}

// DarknessRow names a line of it.
func DarknessRow(name string, f seasons.GreyFit) string {
	return fmt.Sprintf("%s, %s", name, number(f.Logged, "moment", "moments"))
}

// DarknessTick is a mark of its axis.
func DarknessTick(lux float64) string { return fmt.Sprintf("%g lx", lux) }

// PoolDarkness says a pool's own threshold; nothing while it has none.
func PoolDarkness(p seasons.PoolDarkness) string {
	if f := p.Fit; f.From == "pool" {
		return fmt.Sprintf("On %s: %s lx by its own %d of %s, known to %s–%s lx; single evenings scatter by a factor of %.1f.",
			p.Name, lux2(f.Lux), f.Used, number(f.Logged, "moment logged", "moments logged"), lux2(f.Lo), lux2(f.Hi), math.Pow(10, f.Spread))
	}
	return ""
}

// PoolMore is the second line of a pool: what first and later runs brought, the rest
// before, the light, when it was last fished.
func PoolMore(p seasons.Pool) string {
	half := func(name string, r seasons.Row) string {
		if r.Hours == 0 {
			return ""
		}
		return fmt.Sprintf("%s %.1f h, %s fish", name, r.Hours, count(r.Fish))
	}
	rest := ""
	if p.RestMd > 0 {
		rest = "usual rest before those " + Minutes(time.Duration(p.RestMd)*time.Minute)
	}
	best := ""
	if r := p.BestRow; r != nil {
		best = fmt.Sprintf("most an hour so far in the light: %s, %s fish in %.1f h on %s", RowCode(p.Best), count(r.Fish), r.Hours, number(r.Nights, "night", "nights"))
	}
	last := ""
	if !p.Last.IsZero() {
		last = "last fished " + dayAndMonth(p.Last)
		if !p.LastFish.IsZero() {
			last += ", last fish " + dayAndMonth(p.LastFish)
		}
	}
	blank := ""
	if p.Runs > 0 {
		blank = fmt.Sprintf("%d of %s blank", p.Blank, number(p.Runs, "run", "runs"))
	}
	var parts []string
	for _, s := range []string{blank, half("first runs", p.First), half("later runs", p.Later), rest, best, last} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return capital(strings.Join(parts, "; "))
}

// PoolShade says how a pool is shaded: its rate drawn toward the others, or that it is thin.
func PoolShade(p seasons.Pool) string {
	if p.Shrunk == nil {
		return "never fished"
	}
	s := fmt.Sprintf("%s fish in %.1f h on %s: %s an hour, drawn toward the others", count(p.Fish), p.Hours, number(p.Nights, "night", "nights"), rate(*p.Shrunk))
	if p.Thin {
		return s + "; thin: under 5 h or 3 nights"
	}
	return s
}

// SeasonFile names files: season-2026-07, with the table behind it.
func SeasonFile(from, to journal.Date) string {
	switch {
	case from.IsZero():
		return "season"
	case from.Year == to.Year:
		return fmt.Sprintf("season-%d", from.Year)
	}
	return fmt.Sprintf("season-%d-%d", from.Year, to.Year)
}

// SeasonPageFile names a page of a card: season-2026-question-5.
func SeasonPageFile(stem string, card int) string {
	if card == 0 {
		return stem
	}
	return fmt.Sprintf("%s-question-%d", stem, card)
}

// SeasonTablesTitle and SeasonTablesHint are of the dialog that saves tables.
func SeasonTablesTitle() string { return "Save the tables" }
func SeasonTablesHint() string {
	return "One file for each table, beginning with which nights and fish it counts."
}

// PoolOnSketch names a pool on the sketch, with its fish beside its hours.
func PoolOnSketch(p seasons.Pool) string {
	return fmt.Sprintf("%s, %s fish in %.1f h", p.Name, count(p.Fish), p.Hours)
}

// PoolSketchTitle and PoolSketchKey are of the sketch on which pools are shaded.
func PoolSketchTitle(beat string) string { return beat }
func PoolSketchKey() string {
	return "Pools are shaded by fish an hour, drawn toward the others: the stronger, the more. Ruled with lines: thin, under 5 h or 3 nights. Not filled: not fished."
}

// PastReading says how far the nights on a pool are read.
func PastReading(done, of int) string {
	return fmt.Sprintf("Reading the beat's nights: %d of %d. What was fished of the pool stands here when all are read.", done, of)
}

// TogetherReading says how far the nights are read before they are laid together.
func TogetherReading(done, of int) string {
	return fmt.Sprintf("Reading nights: %d of %d. Then they are laid together.", done, of)
}
