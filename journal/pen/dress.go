package pen

import (
	"regexp"
	"slices"
	"strings"

	"gloamline/journal"
	"gloamline/journal/units"
)

var lengthShape = regexp.MustCompile(`(?:\d[\d ./,]*[½¼¾⅛⅜⅝⅞]?|[½¼¾⅛⅜⅝⅞]) *(?:"|″|inches\b|inch\b|in\b|mm\b|cm\b|ft\b|m\b)?`)

// dressWords maps the words of a description to what they set.
var dressWords = func() map[string]func(*journal.Dress) bool {
	out := map[string]func(*journal.Dress) bool{}
	word := func(set func(*journal.Dress) bool, words ...string) {
		for _, w := range words {
			out[w] = set
		}
	}
	bulk := func(s journal.Silhouette) func(*journal.Dress) bool {
		return func(d *journal.Dress) bool { return once(&d.Silhouette, s) }
	}
	tone := func(t journal.Tone) func(*journal.Dress) bool {
		return func(d *journal.Dress) bool { return once(&d.Tone, t) }
	}
	built := func(s string) func(*journal.Dress) bool {
		return func(d *journal.Dress) bool { return once(&d.Built, s) }
	}
	word(bulk(journal.Slim), "slim", "thin", "sparse", "lean")
	word(bulk(journal.MediumBulk), "medium-bulk", "middling")
	word(bulk(journal.Full), "full", "thick", "bulky", "fat")
	word(tone(journal.DarkTone), "dark", "black")
	word(tone(journal.MediumTone), "mid-tone", "medium-tone", "grey", "gray")
	word(tone(journal.LightTone), "pale", "light", "white")
	for _, h := range journal.Hooks {
		word(func(d *journal.Dress) bool { return once(&d.Hook, h) }, h)
	}
	word(built("hook"), "on-a-hook")
	word(built("tube"), "tube")
	word(built("articulated shank"), "articulated-shank", "articulated")
	word(built("surface"), "surface")
	word(func(d *journal.Dress) bool { return once(&d.Barbless, true) }, "barbless")
	word(func(d *journal.Dress) bool { return once(&d.Barbless, false) }, "barbed")
	word(func(d *journal.Dress) bool { return true }, "fly", "a", "with", "and", "the", "lure")
	return out
}()

// once sets a field that is not set yet.
func once[T comparable](f *journal.Field[T], v T) bool {
	if old, ok := f.Get(); ok && old != v {
		return false
	}
	*f = journal.Of(v)
	return true
}

// phrases are words that belong together.
var phrases = strings.NewReplacer("medium bulk", "medium-bulk", "medium tone", "medium-tone", "mid tone", "mid-tone",
	"on a hook", "on-a-hook", "articulated shank", "articulated-shank", "hot spot", "spot", "hot-spot", "spot", "hotspot", "spot")

// ParseDress reads a fly as people describe one: "1in slim dark", "3/4 full pale
// orange spot": length (a bare number in unit), silhouette, tone, hot-spot, hook and
// build, in any order. The error is one sentence.
func ParseDress(text string, unit units.LengthUnit) (journal.Dress, error) {
	var d journal.Dress
	s := phrases.Replace(strings.Join(strings.Fields(strings.ToLower(text)), " "))
	if at := lengthShape.FindStringIndex(s); at != nil {
		l, err := units.ParseLength(strings.Trim(s[at[0]:at[1]], " ,"), unit)
		if err != nil {
			return d, err
		}
		d.Length = journal.Of(l)
		end := at[1]
		if strings.HasSuffix(strings.TrimSpace(s[at[0]:at[1]]), ",") {
			end = at[0] + strings.LastIndex(s[at[0]:at[1]], ",")
		}
		s = s[:at[0]] + " " + s[end:]
	}
	medium := 0
	for i, part := range strings.Split(s, ",") {
		words := strings.Fields(part)
		words, err := takeSpot(&d, words, i > 0)
		if err != nil {
			return d, err
		}
		for _, w := range words {
			set, ok := dressWords[w]
			switch {
			case w == "medium":
				medium++
			case !ok:
				return d, wrongf("“%s” does not describe a fly here: use length, slim or full, dark or pale, and the colour of a spot", w)
			case !set(&d):
				return d, wrongf("“%s” contradicts what stands before it", w)
			}
		}
	}
	if err := settleMedium(&d, medium); err != nil {
		return d, err
	}
	if d == (journal.Dress{}) {
		return d, wrongf("describe the fly: length, silhouette or tone, such as 1 in slim dark")
	}
	return d, nil
}

// takeSpot takes the hot-spot out of a part. After a comma the whole part is its
// colour; else the word before or after "spot" is.
func takeSpot(d *journal.Dress, words []string, whole bool) ([]string, error) {
	at := slices.Index(words, "spot")
	if at < 0 {
		return words, nil
	}
	lo, hi, colour := at, at+1, ""
	switch {
	case whole && at == len(words)-1 && at > 0:
		lo, colour = 0, strings.Join(words[:at], " ")
	case at > 0 && words[at-1] == "no":
		lo, colour = at-1, "no"
	case at > 0 && dressWords[words[at-1]] == nil && words[at-1] != "medium":
		lo, colour = at-1, words[at-1]
	case at+1 < len(words):
		hi, colour = at+2, words[at+1]
	case at > 0:
		lo, colour = at-1, words[at-1]
	default:
		return nil, wrongf("say the colour of the spot, such as orange spot")
	}
	if colour == "no" {
		d.HotSpot = journal.None[string]()
	} else {
		d.HotSpot = journal.Of(colour)
	}
	return append(slices.Clone(words[:lo]), words[hi:]...), nil
}

// settleMedium reads a bare "medium" as whichever of silhouette and tone is not
// said yet.
func settleMedium(d *journal.Dress, n int) error {
	noBulk, noTone := !d.Silhouette.Known(), !d.Tone.Known()
	switch {
	case n == 0:
	case n == 1 && noBulk && noTone:
		return wrongf("medium bulk or mid tone? Say which")
	case n == 1 && noBulk, n == 2 && noBulk && noTone:
		d.Silhouette = journal.Of(journal.MediumBulk)
		if n == 2 {
			d.Tone = journal.Of(journal.MediumTone)
		}
	case n == 1 && noTone:
		d.Tone = journal.Of(journal.MediumTone)
	default:
		return wrongf("“medium” contradicts what else is said")
	}
	return nil
}

var builds = map[string]string{"hook": "on a hook"}

// The words in which a fly is printed, which ParseDress reads.
var (
	silhouetteWords = map[journal.Silhouette]string{journal.Slim: "slim", journal.MediumBulk: "medium bulk", journal.Full: "full"}
	toneWords       = map[journal.Tone]string{journal.DarkTone: "dark", journal.MediumTone: "mid tone", journal.LightTone: "pale"}
)

// PrintDress writes a fly so that ParseDress reads it back: ¾ in slim dark double,
// orange spot. A dress of which nothing is known is "fly".
func PrintDress(d journal.Dress) string {
	var out []string
	if l, ok := d.Length.Get(); ok {
		out = append(out, l.String())
	}
	if s, ok := d.Silhouette.Get(); ok {
		out = append(out, silhouetteWords[s])
	}
	if t, ok := d.Tone.Get(); ok {
		out = append(out, toneWords[t])
	}
	if b, ok := d.Barbless.Get(); ok {
		out = append(out, map[bool]string{true: "barbless", false: "barbed"}[b])
	}
	if h, ok := d.Hook.Get(); ok {
		out = append(out, h)
	}
	if b, ok := d.Built.Get(); ok {
		if w := builds[b]; w != "" {
			b = w
		}
		out = append(out, b)
	}
	if len(out) == 0 {
		out = append(out, "fly")
	}
	s := strings.Join(out, " ")
	if h, ok := d.HotSpot.Get(); ok {
		s += ", " + strings.ToLower(h) + " spot"
	} else if d.HotSpot.IsNone() {
		s += ", no spot"
	}
	return s
}

// SameDress reports whether two flies look the same, lengths to a tenth of a
// millimetre, whatever unit they were typed in.
func SameDress(a, b journal.Dress) bool {
	la, okA := a.Length.Get()
	lb, okB := b.Length.Get()
	if okA != okB || okA && (la.M-lb.M > 1e-4 || lb.M-la.M > 1e-4) {
		return false
	}
	spot := func(d journal.Dress) string { return strings.ToLower(d.HotSpot.Or("")) }
	return a.Silhouette == b.Silhouette && a.Tone == b.Tone && a.Hook == b.Hook && a.Built == b.Built &&
		a.Barbless == b.Barbless && spot(a) == spot(b)
}
