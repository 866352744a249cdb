package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/units"
	seasons "gloamline/timeline/season"
)

// QuestionTitle is the question of a card.
func QuestionTitle(n int) string { return questions[n] }

var questions = map[int]string{
	1:  "In how much light do fish take?",
	2:  "Does the first hour of darkness beat later ones in the same light?",
	3:  "Is the clock or the light the better guide?",
	4:  "What does the moon over the pool do?",
	5:  "Which length of fly in which light?",
	6:  "Was the rule ever tested?",
	7:  "Colour by day, bulk and tone by night: do they matter?",
	8:  "Two flies on one leader: which is taken?",
	9:  "When does a surface lure pay?",
	10: "Is the long fly in a falling flood the exception?",
	11: "After no response, does a change of speed or of size bring the next fish?",
	12: "If all fish came to one size, were others on?",
	13: "Which hooks hold?",
	14: "Which pool, in which light and water?",
	15: "Where in the pool?",
	16: "Does resting a pool pay?",
	17: "First run or second?",
	18: "Does the temperature of the water matter?",
	19: "Colour and level of the water: what difference do they make?",
	20: "When to start, when to stop?",
	21: "What sizes and ages, and when?",
	22: "From a follow to the net: where are fish lost?",
	23: "Are two nights alike?",
	24: "Clients' rods and others: how do they differ?",
	25: "What was planned, and what came of it?",
	26: "What is missing?",
}

// TableTitle is the heading of a table.
func TableTitle(t *seasons.Table) string {
	if n, ok := strings.CutPrefix(t.Name, "rule_"); ok {
		return "inside and outside rule " + n
	}
	if s, ok := tableTitles[t.Name]; ok {
		return s
	}
	return strings.ReplaceAll(t.Name, "_", " ")
}

var tableTitles = map[string]string{
	"light": "by light on the pool", "since_grey": "by hours since the trees went grey", "since_grey_light": "by hours since, and light",
	"moon": "the moon over the pool", "length": "by length of fly", "length_light": "by length of fly and light", "length_drawn": "by length of fly, cut at the rules, and light",
	"hot_spot_day": "hot-spot, before the trees are grey", "tone_day": "tone, before the trees are grey", "bulk_day": "silhouette, before the trees are grey",
	"hot_spot_night": "hot-spot, once the trees are grey", "tone_night": "tone, once the trees are grey", "bulk_night": "silhouette, once the trees are grey",
	"two_flies": "which of two flies", "point_or_dropper": "point or dropper", "surface": "surface lure or not", "surface_light": "surface lure or not, by light",
	"long_falling": "long flies in a falling flood", "long_other_water": "long flies in other water", "change": "what was done after 20 quiet minutes",
	"hooks_landed": "landed, of those hooked", "hooks_hooked": "hooked, of those that touched", "pools": "pool by pool", "pools_light": "pool by light",
	"pools_trend": "pool by what the river did", "pools_runs": "pool by first and later runs", "part": "part of the pool", "rest": "by rest before the run",
	"second_run": "first and later runs through a pool", "temperature": "by temperature of the water", "trend": "by what the river did", "clarity": "by clarity",
	"level": "by level on the staff", "clock": "by the clock", "sizes": "by length of fish", "first_year_fish": "fish in their first year after going to sea, by month",
	"sea_lice": "fish with sea lice, by month", "chain": "landed, of those hooked, by length of fly", "clients": "clients' rods and others",
	"surface_wind": "surface lure or not, by wind", "surface_trend": "surface lure or not, by what the river did", "surface_chain": "hooked, of all that showed or touched",
	"long_speed": "long flies in a falling flood, by speed", "hook_places": "where the hook was, by hook", "part_pools": "part of the pool, pool by pool", "bank": "by true bank fished from",
	"temperature_change": "by change of the water's temperature since the evening before", "warm_water": "fish hooked in warm water",
	"since_peak": "by time since the peak of the last flood", "flood_fresh": "floods after which a fish with sea lice came before the next",
	"moon_cloud": "the moon over the pool, by the cloud noted that night", "moon_pairs": "nights that brought more with the moon over the pool than without",
	"hot_spot_day_length": "length of fly by hot-spot, before the trees are grey", "tone_night_length": "length of fly by tone, once the trees are grey",
	"bulk_night_length": "length of fly by silhouette, once the trees are grey",
	"second_run_fly":    "first runs, and later ones by their flies", "second_run_way": "first runs, and later ones by depth and speed",
	"second_run_pairs": "run for run: pairs of which the later did better, by its flies", "pools_level": "pool by level on the staff",
	"alike": "the latest night, and those likest to it", "alike_length": "on the nights likest to the latest, by length of fly", "alike_light": "on the nights likest to the latest, by light",
	"alike_foretold": "nights on the same side of the middle rate as the likest before", "rod_nights": "rods' nights with a fish", "lacks": "nights by how much the figures miss of them", "rods_on_pool": "by how many rods fished the pool that night",
	"chain_light": "landed, of those hooked, by light", "chain_speed": "landed, of those hooked, by speed of the fly", "lice_trend": "fish with sea lice, by what the river did", "planned": "pools planned and not",
}

// RowLabel names a row of a table. A grid's row has its two labels with a comma.
func RowLabel(t *seasons.Table, r seasons.Row) string {
	code := r.Code
	if !r.Evening.IsZero() {
		return commas(dayAndMonth(r.Evening), r.Name)
	}
	if r.Name != "" {
		_, rest, grid := strings.Cut(code, "/")
		if !grid {
			return r.Name
		}
		return r.Name + ", " + rowCode(t.Name, rest)
	}
	if a, b, ok := strings.Cut(code, "/"); ok {
		return rowCode(t.Name, a) + ", " + rowCode(t.Name, b)
	}
	return rowCode(t.Name, code)
}

// RowCode names a code by itself, such as Pool.Best.
func RowCode(code string) string { return rowCode("", code) }

func rowCode(table, code string) string {
	switch table {
	case "clock":
		h, _ := strconv.Atoi(code)
		return fmt.Sprintf("%s:00 to %02d:00", code, (h+1)%24)
	case "first_year_fish", "sea_lice", "flood_fresh":
		m, _ := strconv.Atoi(code)
		return time.Month(m).String()
	case "sizes":
		return strings.ReplaceAll(strings.Replace(code, "_", "–", strings.Count(code, "_")-1), "_", " ")
	case "trend", "pools_trend", "surface_trend", "lice_trend":
		if code == "" {
			return "river not noted"
		}
		if indexOf(journal.Trends, journal.Trend(code)) {
			return "river " + TrendName(journal.Trend(code))
		}
	case "long_speed", "chain_speed":
		if indexOf(journal.Speeds, journal.Speed(code)) {
			return speeds[journal.Speed(code)]
		}
	case "part", "part_pools":
		return code
	case "clarity":
		return ClarityName(journal.Clarity(code))
	}
	if s, ok := rowCodes[code]; ok {
		return s
	}
	if h, ok := strings.CutPrefix(code, "hour_"); ok {
		n, _ := strconv.Atoi(h)
		return ordinal(n) + " hour"
	}
	return strings.ReplaceAll(code, "_", " ")
}

func indexOf[T comparable](list []T, v T) bool {
	for _, x := range list {
		if x == v {
			return true
		}
	}
	return false
}

var rowCodes = map[string]string{
	"over_100x": "over 100 times grey trees", "10x_100x": "10 to 100 times grey trees", "1x_10x": "up to 10 times grey trees",
	"grey": "trees grey", "grey_10th": "10 to 100 times darker than grey trees", "grey_100th": "over 100 times darker than grey trees",
	"before": "before", "no_moon": "no moon on it", "moon_over": "moon over it",
	"half_inch": "½ in", "three_quarter_inch": "¾ in", "1_inch": "1 in", "1_and_half_inch": "1½ in", "2_inch": "2 in", "3_inch": "3 in", "longer": "longer",
	"inside": "inside the rule", "outside": "outside it", "without": "without hot-spot", "with": "with hot-spot",
	"longer_on_point": "the longer, on the point", "longer_on_dropper": "the longer, on the dropper",
	"fuller_on_point": "the fuller, on the point", "fuller_on_dropper": "the fuller, on the dropper",
	"darker_on_point": "the darker, on the point", "darker_on_dropper": "the darker, on the dropper",
	"dropper": "the dropper", "under": "under the surface", "surface": "surface lure", "shorter": "shorter flies", "long": "long flies",
	"speed": "another speed", "size": "another size", "carried on": "carried on", "first": "first run", "later": "later runs",
	"rest_0_20": "rested under 20 min", "rest_20_60": "rested 20 to 60 min", "rest_60": "rested an hour or more",
	"under_10": "under 10 °C", "10_13": "10 to 13 °C", "13_16": "13 to 16 °C", "16_18": "16 to 18 °C", "over_18": "18 °C and over",
	"wind_0_1": "hardly any wind", "wind_2_3": "light wind, force 2 and 3", "wind_4": "force 4 and over",
	"left_bank": "true left bank", "right_bank": "true right bank", "colder": "over ½ °C colder", "steady": "within ½ °C", "warmer": "over ½ °C warmer",
	"from_18_c": "at 18 °C and over", "from_20_c": "at 20 °C and over", "peak_0_12_h": "under 12 h", "peak_12_24_h": "12 to 24 h", "peak_1_2_d": "1 to 2 days",
	"peak_2_4_d": "2 to 4 days", "peak_4_10_d": "4 to 10 days", "no_peak_10_d": "no flood for 10 days",
	"cloud_0_2": "clear sky, 0 to 2 eighths", "cloud_3_5": "broken cloud", "cloud_6_8": "overcast, 6 to 8 eighths", "more_with_moon": "more with the moon",
	"all_later": "all later runs", "same_flies": "later, the same flies", "other_flies": "later, other flies of the same length", "other_size": "later, another length of fly",
	"same_way": "later, fished the same way", "other_depth": "later, at another depth", "other_speed": "later, at another speed alone",
	"together": "the likest together", "same_side": "the same side", "lacks_nothing": "nothing missing", "lacks_one": "one thing", "lacks_some": "two to four things", "lacks_more": "five things and more", "one_rod": "one rod", "two_rods": "two rods", "three_rods": "three rods and more",
	"low": "low third", "middle": "middle third", "high": "high third", "own": "other rods", "client": "clients' rods",
	"planned": "planned", "unplanned": "not planned", "light": "the light", "clock": "the clock",
}

// BandLux says a band of light in lux for a threshold: 0.3 to 0.03 lx.
func BandLux(b seasons.Band, grey units.Lux) string {
	from, to := b.Factors()
	lux := func(f float64) string { return strconv.FormatFloat(f*float64(grey), 'g', 2, 64) }
	switch {
	case math.IsInf(from, 1):
		return "over " + lux(to) + " lx"
	case to == 0:
		return "under " + lux(from) + " lx"
	}
	return lux(from) + " to " + lux(to) + " lx"
}

// PerName names a denominator.
func PerName(per string) string {
	if per == "fly-hours" {
		return "fly-hours: an hour counts in each row that has a fly on the leader"
	}
	return per
}
