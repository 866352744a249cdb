//go:build e2e

package e2e

import (
	"regexp"
	"strings"

	"github.com/stretchr/testify/require"
)

// The words of a card that are keys rather than text.
const (
	tickIt  = "\x00tick"   // Space on a field that is yes or nothing
	unfold  = "\x00unfold" // as a field: the button that shows the seldom fields
	moreWay = "More"       // how the label of that button begins
)

var keyboardAt = regexp.MustCompile(`msg=keyboard (field|button)=("[^"]*"|\S*)`)

// at is where in a card the keyboard is, as the log has it last, and how often the log
// has said such a thing.
func (p *program) at() (field, button string, n int) {
	all := keyboardAt.FindAllStringSubmatch(p.output(), -1)
	if len(all) == 0 {
		return "", "", 0
	}
	last := all[len(all)-1]
	if name := strings.Trim(last[2], `"`); last[1] == "field" {
		field = name
	} else {
		button = name
	}
	return field, button, len(all)
}

// tabTo goes to a field of the open card, by Tab alone. Each stroke is waited for: what
// is typed next must not reach the field before.
func (p *program) tabTo(id string) {
	p.d.t.Helper()
	var met []string
	for range 40 {
		field, button, n := p.at()
		if field == id && id != unfold || id == unfold && strings.HasPrefix(button, moreWay) {
			return
		}
		met = append(met, field+button)
		p.press("Tab")
		p.d.until("the keyboard to go on from "+field+button+" to "+id, func() bool {
			_, _, now := p.at()
			return now > n
		})
	}
	p.d.shot("lost-" + id)
	require.FailNow(p.d.t, "the card has no such field", "%s; met %v", id, met)
}

// card opens a card with keys and fills its fields in, pairs of field and text. Then
// Return stores it, which the log must tell.
func (p *program) card(open string, pairs ...string) {
	p.d.t.Helper()
	p.key("card open", open)
	p.fill(pairs...)
}

// fill fills fields of the open card in and stores it.
func (p *program) fill(pairs ...string) {
	p.d.t.Helper()
	for i := 0; i+1 < len(pairs); i += 2 {
		p.tabTo(pairs[i])
		switch text := pairs[i+1]; {
		case pairs[i] == unfold:
			p.press("Return")
		case text == tickIt:
			p.press("space")
		default:
			p.write(text)
		}
	}
	stored := p.count("msg=stored")
	unfinished := p.count("card unfinished")
	p.press("Return")
	p.d.until("the card to be stored", func() bool {
		if p.count("card unfinished") > unfinished {
			p.d.shot("unfinished")
			require.FailNow(p.d.t, "the card asks for more", "%q", pairs)
		}
		return p.count("msg=stored") > stored
	})
}
