package pen

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ensure that a page of notes by several hands gives what was meant, or asks: read line
// by line and as one page.
func TestPageOfNotes(t *testing.T) {
	b, err := os.ReadFile("testdata/page.tsv")
	require.NoError(t, err)
	var lines, meant []string
	for l := range strings.SplitSeq(string(b), "\n") {
		if text, want, ok := strings.Cut(l, "\t"); ok {
			lines, meant = append(lines, text), append(meant, want)
		}
	}
	require.GreaterOrEqual(t, len(lines), 40)
	text := strings.Join(lines, "\n")
	p := Read(text, larrick(t))
	covered(t, p)
	require.Len(t, p.Lines, len(lines))
	for i, l := range p.Lines {
		assert.Equal(t, meant[i], said(Page{text, []Line{l}}), "%s\n%v", lines[i], l.Clauses)
	}
}

// Ensure that what cannot be read stays a note, with a reason that helps.
func TestNotesKept(t *testing.T) {
	bad := map[string]string{
		"after fish 3 A pull":         "there is no “fish 3” in this night",
		"10 to 11 A pull":             "“10 to 11” may be a time or a stretch: write it in figures, such as 22:00-23:00",
		"alder from ten to eleven":    "“from ten to eleven” may be a time or a stretch: write it in figures, such as 22:00-23:00",
		"landed 9 ft 6 in 2240":       "a fish is between 2 cm and 2 m long",
		"nearly landed one 2330":      "“nearly” changes what is said",
		"25:10 landed":                "“25:10” is not a time of day",
		"landed 2 in alder 2240":      "what “2” counts is not said",
		"landed 2241 2250":            "two times: write a comma, or a line for each",
		"landed 2lb 18oz 2241":        "18 oz is not less than 1 lb, which is 16 oz",
		"came off 2240 kept":          "only a landed fish is returned or kept",
		"river up 2in 2200":           "by how much it rose or fell is not a level: write the level on the staff",
		"breeze 2200":                 "how strong the wind was, or where from, is not said",
		"alder":                       "what happened there is not said",
		"2310-2250 alder A":           "the later time comes before the earlier one",
		"A and C landed 2240":         "two rods for one fish",
		"after 2240 landed":           "“after” a time leaves the other end open: write a stretch such as 2310-2340",
		"landed point dropper 2240":   "two flies: which took the fish?",
		"2241":                        "what happened is not said, or the words do not go together",
		"zorble 2241":                 "not read: “zorble”",
		"we walked up past mill lade": "too little of it could be read",
		"alder tail crook 2220-2310":  "“Alder Pool” and “The Crook”: write a line for each",
		"landed hen cock 2240":        "“hen” and “cock”: write a line for each",
		"boil pull 2240":              "“a boil” and “a pull”: write a line for each",
		"wind 2200":                   "how strong the wind was, or where from, is not said",
		"the and with":                "nothing here says what happened",
		"landed 400 lb 2240":          "400 lb is more than any here; the most is 100 kg",
		"last year landed 2240":       "“last year” changes what is said",
		"didn't see a fish 2240":      "“didn't” changes what is said",
		"thought I had a pull 2240":   "“thought” changes what is said",
		"landed kept returned 2240":   "“kept” and “returned”: write a line for each",
		"no fish 2300":                "“no” changes what is said",
		"moon up moon behind 0031":    "“moon up” and “moon behind”: write a line for each",
		"A 2230 pm landed":            "“2230 pm” mixes the clocks of 12 and 24 hours",
		"clear coloured water 2200":   "“the water clear” and “coloured water”: write a line for each",
		"landed 1lb 2lb 2240":         "“1 lb” and “2 lb”: write a line for each",
	}
	require.GreaterOrEqual(t, len(bad), 30)
	for text, want := range bad {
		p := Read(text, larrick(t))
		covered(t, p)
		for _, c := range p.Lines[0].Clauses {
			assert.Empty(t, c.Readings, text)
		}
		assert.Equal(t, want, p.Lines[0].Clauses[0].Note.Reason, text)
	}
}
