package words

import (
	"regexp"
	"strings"

	"gloamline/journal/units"
	"gloamline/timeline"
)

// EmptyLog says on a night without entries what to do first, with the keys.
func EmptyLog(n *timeline.Night) []string {
	first := "Nothing is written down yet: R adds a run through a pool, C the flies on the leader, F a fish."
	if len(n.Rods) == 0 {
		first = "Nobody is down as fishing yet: Ctrl+Shift+N changes the night and says who fished. Then R adds a run through a pool."
	}
	return []string{first, "A lists all that can be added. A click on a pool and on the strip says where and when."}
}

// LuxShort is the light at a contact in two digits: 1.2 lx; a range when the time is
// uncertain.
func LuxShort(k timeline.Contact) string {
	if k.At.Exact() {
		return k.Light.Lux.String()
	}
	return units.LuxRange(k.Light.Lo, k.Light.Hi)
}

// Paragraph runs lines into one: after a full stop a sentence begins, else a semicolon
// stands between.
func Paragraph(lines []string) string {
	var b strings.Builder
	for i, l := range lines {
		if i > 0 {
			if !strings.HasSuffix(lines[i-1], ".") {
				b.WriteByte(';')
			}
			b.WriteByte(' ')
		}
		b.WriteString(l)
	}
	return b.String()
}

// PhotoOf says what a photo is by its file: photo fish.jpg.
func PhotoOf(name string) string { return strings.TrimSpace("photo " + name) }

var figureUnit = regexp.MustCompile(`([0-9½¼¾⅛⅜⅝⅞]) (°C|°F|mm|cm|m|in|ft|lb|oz|kg|g|lx|s|min|h|eighths?)\b`)

// Bound holds each figure to its unit, so that a line does not break between them;
// Unbound undoes that once the lines are made.
func Bound(s string) string { return figureUnit.ReplaceAllString(s, "$1\u00a0$2") }

// Unbound is s with common spaces.
func Unbound(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }
