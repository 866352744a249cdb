package pen

import (
	"strings"

	"gloamline/geo"
	"gloamline/journal"
)

// trie finds the longest phrase at a place.
type trie struct {
	next   map[string]*trie
	senses []sense
}

func (t *trie) add(phrase string, s sense) {
	for _, w := range strings.Fields(phrase) {
		if t.next == nil {
			t.next = map[string]*trie{}
		}
		n := t.next[w]
		if n == nil {
			n = &trie{}
			t.next[w] = n
		}
		t = n
	}
	t.senses = append(t.senses, s)
}

// words is the table of trade words: every word or phrase with its meanings. A
// phrase in two rows has two meanings, and both are offered where both make sense.
var words = func() *trie {
	t := &trie{}
	row := func(s slot, val any, label string, phrases ...string) {
		for _, p := range phrases {
			t.add(p, sense{s, val, label})
		}
	}
	row(filler, nil, "", "the", "an", "a", "with", "was", "were", "is", "it", "he", "she", "we", "i", "his", "her", "in", "at", "of", "on", "from",
		"had", "got", "went", "then", "and", "to", "for", "by", "into", "there", "that", "this", "one", "now", "again", "some", "good", "nice", "my", "me",
		"again", "o'clock", "hrs", "still", "just", "so", "as", "fishing", "fished with", "which", "my", "ours", "our", "us", "s", "pool", "very", "after that",
		"first", "first run", "second run", "third run", "run 1", "run 2", "run 3", "1st run", "2nd run", "3rd run", "2nd", "1st", "time", "fair")
	row(hedge, nil, "changes what is said", "not", "no", "never", "nearly", "almost", "didn't", "didnt", "did not", "without", "might", "maybe", "perhaps", "if",
		"thought", "should", "would", "could", "want", "wanted", "hoping", "tomorrow", "yesterday", "last year", "last week", "next time", "said", "says", "heard",
		"wasn't", "wasnt", "couldn't", "couldnt", "can't", "neither", "nor", "nobody", "none", "instead of", "unless", "than", "why", "who", "remember", "they", "others", "missed")
	row(fishWord, nil, "about the fish: in the note", "fresh", "stale", "silver", "bright", "coloured", "red", "dark", "fat", "thin", "small", "big", "long", "tiny", "wee", "jumped", "hard", "well", "strong")
	row(runVerb, nil, "fishing the pool", "run", "fished", "fishing", "went down", "down", "started", "began", "went through", "through")
	row(bankOf, geo.TrueLeft, "true left bank", "left bank", "true left", "true left bank", "from the left bank", "lb bank", "tl")
	row(bankOf, geo.TrueRight, "true right bank", "right bank", "true right", "true right bank", "from the right bank", "tr")

	row(touchOf, journal.Follow, "a follow", "follow", "followed", "a follow", "following", "wake behind the fly")
	row(touchOf, journal.Boil, "a boil", "boil", "boiled", "swirl", "swirled", "boil at the fly")
	row(touchOf, journal.Pluck, "a pluck", "pluck", "plucked", "nip", "knock", "tap", "tug", "plucks", "tapped", "tugged", "nipped", "knocked", "nudged", "nudge")
	row(touchOf, journal.Pull, "a pull", "pull", "pulled", "good pull")
	row(touchOf, journal.Lost, "hooked, came off", "came off", "fell off", "dropped", "lost", "off", "hooked and lost", "hooked lost", "threw the hook", "shook off")
	row(flyLost, nil, "the fly was lost", "lost", "broke off", "snapped off", "left in a tree", "fly gone")
	row(flyOff, nil, "the fly was taken off", "off", "took off", "taken off", "cut off", "removed")
	row(flyOff, 1, "the dropper was taken off", "took the dropper off", "took dropper off", "took off the dropper", "dropper taken off", "cut the dropper off")
	row(flyOff, 0, "the point fly was taken off", "took the point off", "took the point fly off", "took off the point", "point fly taken off", "cut the point off")
	row(touchOf, journal.Landed, "landed", "landed", "hooked and landed", "caught", "netted", "in the net", "beached", "got one", "landed a", "took one of")
	row(touchOf, journal.Landed, "hooked and landed", "hooked")
	row(touchOf, journal.Lost, "hooked, came off", "hooked")
	row(touchOf, journal.Pull, "a pull", "take", "a take", "took")
	row(touchOf, journal.Lost, "hooked, came off", "take", "a take")
	row(touchOf, journal.Pluck, "a pluck", "touch", "touched")
	row(touchOf, journal.Pull, "a pull", "touch", "touched")
	row(touchOf, journal.Boil, "a boil", "rose", "rise")
	row(trendOf, journal.Rising, "the river rising", "rose")
	row(fishNoun, nil, "a fish", "fish", "a fish", "fish.", "trout")
	row(speciesOf, journal.SeaTrout, "sea trout", "sea trout", "seatrout", "sea-trout")
	row(speciesOf, journal.BrownTrout, "brown trout", "brown trout", "brownie", "brown")
	row(speciesOf, journal.Salmon, "salmon", "salmon")
	row(speciesOf, journal.OtherFish, "another kind of fish", "other fish", "eel")
	for _, c := range journal.Classes {
		row(classOf, c, c, c)
	}
	row(sexOf, "hen", "hen", "hen")
	row(sexOf, "cock", "cock", "cock")
	row(liceOf, true, "with sea lice", "lice", "sea lice", "liced", "sea-liced")
	row(liceOf, false, "no sea lice", "no lice", "no sea lice")
	for _, h := range journal.HookPlaces {
		row(hookPlaceOf, h, "hooked in the "+h, h)
	}
	row(hookPlaceOf, "foul", "foul-hooked", "foul hooked", "foul-hooked")
	row(fateOf, journal.Returned, "returned", "returned", "released", "put back", "went back", "back", "let go")
	row(fateOf, journal.Kept, "kept", "kept", "killed", "taken home")
	row(partOf, "head", "the head of the pool", "head", "top", "head of the pool")
	row(partOf, "neck", "the neck", "neck", "throat", "neck of the pool")
	row(partOf, "body", "the body of the pool", "body", "middle", "belly", "body of the pool")
	row(partOf, "tail", "the tail of the pool", "tail", "glide", "tail of the pool")

	row(flyNoun, nil, "a fly", "fly", "flies", "lure")
	row(positionOf, 0, "the point", "point", "point fly", "tail fly", "the point")
	row(positionOf, 1, "the first dropper", "dropper", "first dropper", "dropper fly", "bob", "bob fly", "dropper 1")
	row(positionOf, 2, "the second dropper", "second dropper", "dropper 2", "2nd dropper")
	row(positionOf, 3, "the third dropper", "third dropper", "dropper 3", "3rd dropper")
	for w := range dressWords {
		switch w {
		case "fly", "a", "with", "and", "the", "lure":
		default:
			row(flyWord, w, "of the fly: "+w, strings.ReplaceAll(w, "-", " "))
			if strings.Contains(w, "-") {
				row(flyWord, w, "of the fly: "+w, w)
			}
		}
	}
	row(flyWord, "medium", "of the fly: medium", "medium")
	row(changeVerb, nil, "changed to", "changed", "changed to", "change", "put on", "swapped", "swapped to", "switched", "switched to", "put up", "now fishing", "tied on", "new")
	row(lineOf, journal.Floating, "floating line", "floating line", "floater", "floating")
	row(lineOf, journal.Intermediate, "intermediate line", "intermediate", "intermediate line")
	row(lineOf, journal.SinkTip, "sink-tip line", "sink tip", "sink-tip", "sink tip line", "sink-tip line")
	row(lineOf, journal.Sinking, "sinking line", "sinking line", "sinker", "sinking")
	row(leaderNoun, nil, "leader", "leader")
	row(aloneOf, nil, "no other fly", "alone", "on its own", "solo", "single fly")
	row(surfaceLure, nil, "a surface lure alone", "surface lure", "surface fly", "wake fly")
	row(speedOf, journal.DeadDrift, "dead drift", "dead drift", "dead-drift", "drifted")
	row(speedOf, journal.FigureOfEight, "figure of eight", "figure of eight", "fig of eight", "figure of 8", "fig of 8", "figure-of-eight")
	row(speedOf, journal.SlowStrip, "slow strip", "slow strip", "slow", "slowly", "slower")
	row(speedOf, journal.FastStrip, "fast strip", "fast strip", "fast", "faster", "quick")
	row(speedOf, journal.Roll, "roll", "roll", "rolled", "roll retrieve")
	row(depthOf, journal.OnSurface, "at the surface", "surface", "on the surface", "at the surface")
	row(depthOf, journal.UnderSurface, "just under", "just under", "just under the surface")
	row(depthOf, journal.MidWater, "mid-water", "mid-water", "mid water", "midwater")
	row(depthOf, journal.Deep, "deep", "deep", "deeper")

	row(cloudNoun, nil, "cloud", "cloud", "sky", "clouds", "eighths", "of cloud", "cloud cover")
	row(cloudOf, 8, "8 eighths of cloud", "overcast", "full cloud", "cloud full")
	row(cloudOf, 4, "4 eighths of cloud", "half cloud")
	row(cloudOf, 0, "no cloud", "cloudless", "no cloud", "clear sky", "sky clear", "clear skies")
	row(cloudOf, 0, "the sky clear", "clear", "cleared")
	row(clarityOf, journal.ClearWater, "the water clear", "clear", "cleared")
	row(cloudKindOf, journal.ThinCloud, "thin cloud", "thin cloud", "cloud thin")
	row(cloudKindOf, journal.ThinCloud, bareThin, "thin")
	row(cloudKindOf, journal.AverageCloud, "average cloud", "average cloud")
	row(cloudKindOf, journal.DarkCloud, "dark cloud", "dark cloud", "cloud dark", "heavy cloud", "thick cloud")
	row(moonNoun, nil, "the moon", "moon", "the moon", "full moon", "half moon", "new moon")
	row(moonOf, journal.MoonClear, "moon up", "moon up", "moon out", "moon over the hill", "moon rose", "moon on the water", "moon is up", "moon came up", "moon came out", "full moon up", "moon clear", "moon on water")
	row(moonOf, journal.MoonVeiled, "moon veiled", "moon veiled", "moon hazy", "veiled moon", "hazy moon", "veiled")
	row(moonOf, journal.MoonBehind, "moon behind", "moon behind", "moon behind cloud", "moon behind the hill", "moon behind clouds", "moon in", "moon hidden", "moon gone behind the hill", "moon gone")
	row(moonOf, journal.MoonSeen(""), "no moon", "no moon")
	row(treesGrey, nil, "colour gone from the trees", "trees grey", "trees gray", "trees gone grey", "trees went grey", "trees are grey", "grey trees", "trees lost colour",
		"colour gone from the trees", "colour gone from trees", "colour out of the trees", "trees greyed", "trees all grey", "no colour in the trees", "trees had gone grey", "trees had lost their colour", "trees lost their colour")
	row(treesGrey, nil, "colour gone from the trees", "colour gone", "colour has gone", "color gone", "colour's gone", "colours gone", "lost colour", "colour out")
	row(clarityOf, journal.ClearWater, "colour gone from the water", "colour gone", "colour has gone", "color gone", "colour's gone", "colours gone", "lost colour", "colour out",
		"colour gone from the water", "colour gone from the river", "colour gone out of the water", "colour out of the water")
	row(stepOf, nil, "at once", "at once", "suddenly")
	row(windNoun, nil, "wind", "wind", "breeze", "force", "wind force")
	row(windOf, 0, "no wind", "no wind", "calm", "flat calm", "windless")
	row(windOf, 2, "light breeze, force 2", "light breeze")
	row(windOf, 1, "light air, force 1", "light air", "light airs")
	row(windOf, 3, "gentle breeze, force 3", "gentle breeze")
	row(windOf, 4, "moderate breeze, force 4", "moderate breeze")
	row(windOf, 5, "fresh breeze, force 5", "fresh breeze")
	for i, c := range compass {
		row(windFrom, float64(i)*22.5, "from the "+strings.ToUpper(c), c)
	}
	for w, d := range map[string]float64{"north": 0, "east": 90, "south": 180, "west": 270, "southwest": 225, "northwest": 315, "southeast": 135, "northeast": 45,
		"south-west": 225, "north-west": 315, "south-east": 135, "north-east": 45, "westerly": 270, "easterly": 90, "southerly": 180, "northerly": 0} {
		row(windFrom, d, "from the "+w, w)
	}
	row(mistOf, true, "mist", "mist", "misty", "mist down", "mist coming down", "mist came down", "mist rising", "steam")
	row(mistOf, false, "no mist", "no mist", "mist gone", "mist cleared")
	row(rainOf, true, "rain", "rain", "raining", "drizzle", "showers", "showery", "rain on and off", "rain off and on", "rain started", "started raining")
	row(rainOf, false, "no rain", "no rain", "dry", "rain stopped")
	row(airNoun, nil, "the air", "air", "air temp", "air temperature")
	row(riverNoun, nil, "the river", "river", "water", "water temp", "water temperature", "river temp")
	row(levelNoun, nil, "the level on the staff", "level", "gauge", "staff", "water level", "river level", "board")
	row(trendOf, journal.Rising, "the river rising", "rising", "river rising", "water rising", "river up", "coming up")
	row(trendOf, journal.Peak, "at its peak", "peak", "at its peak")
	row(trendOf, journal.FallingFlood, "falling flood", "falling flood", "falling")
	row(trendOf, journal.FiningDown, "fining down", "fining down", "fining")
	row(trendOf, journal.NormalLevel, "summer level", "normal", "summer level", "normal level", "dead low")
	row(clarityOf, journal.TeaWater, "tea-coloured water", "tea", "tea-coloured", "tea coloured", "peaty", "peat stained")
	row(clarityOf, journal.ColouredWater, "coloured water", "coloured", "coloured water", "dirty", "muddy", "colour in")
	row(clarityOf, journal.ClearWater, "clear water", "gin clear", "clear water", "water clear")
	row(readyOf, nil, "the pool will not be scared now", "ready", "is ready")
	row(breakOf, nil, "a break", "break", "coffee", "tea break", "soup", "pause", "paused", "stopped for tea", "stopped for soup", "stopped for coffee", "sat out", "rest", "rested", "supper")
	row(endOf, nil, "the end of the night", "packed up", "finished", "end", "home", "went home", "off the water", "called it a night", "ended", "end of night", "stopped", "stop", "the end")
	row(breakOf, nil, "a break", "stopped", "stop")
	for w, why := range map[string]string{"enough": "enough", "tired": "tired", "cold": "cold", "too cold": "cold", "mist": "mist", "rain": "rain", "river rising": "river rising", "dawn": "dawn",
		"getting light": "dawn", "no fish showing": "no fish showing", "nothing showing": "no fish showing", "limit reached": "limit reached", "out of time": "time", "time up": "time", "other reasons": "other"} {
		row(endWhy, why, "because: "+why, w)
	}
	return t
}()

// bareThin is thin without the cloud beside it, which says something only of a cloud that is
// spoken of.
const bareThin = "thin, of the cloud"

var compass = []string{"n", "nne", "ne", "ene", "e", "ese", "se", "sse", "s", "ssw", "sw", "wsw", "w", "wnw", "nw", "nnw"}
