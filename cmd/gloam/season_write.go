package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"text/tabwriter"

	"gloamline/timeline/season"
	"gloamline/ui/words"
)

// answer is a card's question and answer in words, beside its figures.
type answer struct {
	N        int      `json:"n"`
	Question string   `json:"question"`
	Answer   string   `json:"answer"`
	Missing  []string `json:"missing,omitempty"`
}

// seasonDocument is the document with every digit.
func seasonDocument(s *season.Season, title string) ([]byte, error) {
	doc := struct {
		Schema string   `json:"schema"`
		Title  string   `json:"title"`
		Said   []answer `json:"said"`
		*season.Season
	}{Schema: season.Schema, Title: title, Season: s}
	for _, c := range s.Cards {
		a := answer{N: c.N, Question: words.QuestionTitle(c.N), Answer: words.CardSentence(s, c)}
		for _, m := range c.Missing {
			a.Missing = append(a.Missing, words.MissingLine(m))
		}
		doc.Said = append(doc.Said, a)
	}
	return json.Marshal(doc)
}

// seasonJSON is the document of SEASON.md.
func seasonJSON(s *season.Season, title string) (string, error) {
	b, err := seasonDocument(s, title)
	if err != nil {
		return "", err
	}
	var out bytes.Buffer
	if err := json.Indent(&out, sixDigits(b), "", " "); err != nil {
		return "", err
	}
	return out.String() + "\n", nil
}

// sixDigits rounds the numbers of a JSON text to six significant digits: more than any of
// them means, and the same on every machine.
func sixDigits(b []byte) []byte {
	out := make([]byte, 0, len(b))
	for i := 0; i < len(b); {
		switch c := b[i]; {
		case c == '"':
			j := i + 1
			for b[j] != '"' {
				if b[j] == '\\' {
					j++
				}
				j++
			}
			out = append(out, b[i:j+1]...)
			i = j + 1
		case c == '-' || c >= '0' && c <= '9':
			j := i
			for j < len(b) && strings.IndexByte("+-.eE0123456789", b[j]) >= 0 {
				j++
			}
			if v, err := strconv.ParseFloat(string(b[i:j]), 64); err == nil && bytes.ContainsAny(b[i:j], ".e") {
				out = strconv.AppendFloat(out, v, 'g', 6, 64)
			} else {
				out = append(out, b[i:j]...)
			}
			i = j
		default:
			out = append(out, c)
			i++
		}
	}
	return out
}

// seasonText is the page for people.
func seasonText(s *season.Season, title string, fold bool) string {
	var b strings.Builder
	line := func(text string) {
		if text != "" {
			fmt.Fprintf(&b, "%s\n", text)
		}
	}
	line(title)
	line(words.SeasonLine(s))
	line(words.UnplacedLine(s))
	for _, d := range s.Darkness {
		line("Trees grey, " + words.DarknessSentence(d))
	}
	b.WriteString("\n")
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "pool\truns\thours\tnights\tfish\tan hour\tdrawn toward the others")
	for _, p := range s.Pools {
		shrunk := ""
		if p.Shrunk != nil {
			shrunk = fmt.Sprintf("%.2f", *p.Shrunk)
			if p.Thin {
				shrunk += " (few hours)"
			}
		}
		fmt.Fprintf(w, "%s, %s\t%d\t%.1f\t%d\t%.0f\t%s\t%s\n", p.Name, p.Beat, p.Runs, p.Hours, p.Nights, p.Fish, words.SeasonRate(p.Row), shrunk)
	}
	w.Flush()
	for _, c := range s.Cards {
		fmt.Fprintf(&b, "\n%d. %s\n   %s\n", c.N, words.QuestionTitle(c.N), words.CardSentence(s, c))
		if c.N == 6 {
			for _, r := range s.Rules {
				fmt.Fprintf(&b, "   “%s”: %s\n", r.Words, words.RuleSentence(r))
			}
		}
		for _, m := range c.Missing {
			fmt.Fprintf(&b, "   - %s\n", words.MissingLine(m))
		}
		if !fold {
			continue
		}
		if c.N == 3 {
			fmt.Fprintf(&b, "   [%s]\n", words.ClockOrLightInFull(s.ClockOrLight))
		}
		for _, t := range c.Tables {
			if test := words.TestInFull(t); test != "" {
				fmt.Fprintf(&b, "   [%s: %s]\n", words.TableTitle(t), test)
			}
		}
	}
	return b.String()
}
