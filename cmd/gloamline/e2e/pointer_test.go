//go:build e2e

package e2e

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"time"

	"github.com/stretchr/testify/require"
)

// region is something in the window that the pointer can find, in pixels of the window.
type region struct {
	name       string
	x, y, w, h float64
}

var regionLine = regexp.MustCompile(`msg=region name=("(?:[^"\\]|\\.)*"|\S+) x=(\S+) y=(\S+) w=(\S+) h=(\S+)`)

// told asks the program itself what can be pointed at now, and where, and what the fields
// of an open card hold: with -v it answers SIGUSR1 in its log. So no test knows a pixel by
// heart, and none types on before what it typed has arrived.
func (p *program) told() string {
	p.d.t.Helper()
	from, n := len(p.output()), p.count(`msg="regions told"`)
	require.NoError(p.d.t, p.cmd.Process.Signal(syscall.SIGUSR1))
	p.says(`msg="regions told"`, n+1)
	return p.output()[from:]
}

// regions is what can be pointed at now.
func (p *program) regions() []region {
	p.d.t.Helper()
	var out []region
	for _, m := range regionLine.FindAllStringSubmatch(p.told(), -1) {
		r := region{name: unquoted(m[1])}
		for i, v := range []*float64{&r.x, &r.y, &r.w, &r.h} {
			*v, _ = strconv.ParseFloat(m[2+i], 64)
		}
		out = append(out, r)
	}
	return out
}

var holdsLine = regexp.MustCompile(`msg=holds field=(\S+) text=("(?:[^"\\]|\\.)*"|\S+) selected=("(?:[^"\\]|\\.)*"|\S+)`)

// holds is what a field of the open card shows, and what of it is selected.
func (p *program) holds(field string) (text, selected string) {
	p.d.t.Helper()
	for _, m := range holdsLine.FindAllStringSubmatch(p.told(), -1) {
		if m[1] == field {
			return unquoted(m[2]), unquoted(m[3])
		}
	}
	return "", ""
}

// unquoted is a value of the log as it was before it was written there.
func unquoted(s string) string {
	if q, err := strconv.Unquote(s); err == nil {
		return q
	}
	return s
}

// find waits until the window shows something whose name begins so.
func (p *program) find(name string) (found region) {
	p.d.t.Helper()
	p.d.until("the window to show "+name, func() bool {
		for _, r := range p.regions() {
			if strings.HasPrefix(strings.ToLower(r.name), strings.ToLower(name)) {
				found = r
				return true
			}
		}
		time.Sleep(100 * time.Millisecond)
		return false
	})
	return found
}

// pointer moves the pointer to a place of the window.
func (p *program) pointer(x, y float64) {
	p.d.t.Helper()
	p.d.run("xdotool", "mousemove", "--sync", "--window", p.window, fmt.Sprintf("%.0f", x), fmt.Sprintf("%.0f", y))
}

// click clicks a button of the mouse in the middle of a region.
func (p *program) click(r region, button string) {
	p.d.t.Helper()
	p.pointer(r.x+r.w/2, r.y+r.h/2)
	p.d.run("xdotool", "click", button)
}

// drag moves the pointer from one place to another with the button held. The window takes
// the way in as many steps as it has time for, one at the least.
func (p *program) drag(x0, y0, x1, y1 float64) {
	p.d.t.Helper()
	p.pointer(x0, y0)
	p.d.run("xdotool", "mousedown", "1")
	for i := 1; i <= 8; i++ {
		f := float64(i) / 8
		p.pointer(x0+(x1-x0)*f, y0+(y1-y0)*f)
	}
	p.d.run("xdotool", "mouseup", "1")
}

// minute is the place on the strip of an instant, from the plot that the program tells.
func (p *program) minute(at time.Time) (x, y float64) {
	p.d.t.Helper()
	r := p.find("plot ")
	f := strings.Fields(r.name)
	from, err := time.Parse(time.RFC3339, f[1])
	require.NoError(p.d.t, err)
	to, err := time.Parse(time.RFC3339, f[2])
	require.NoError(p.d.t, err)
	return r.x + r.w*at.Sub(from).Seconds()/to.Sub(from).Seconds(), r.y + 8
}

// settled finds something once it stands still: what is typed into one field can add a
// line below it, which moves the next. The program goes once round its loop of events and
// frames from one answer to the next, so three alike mean that nothing is under way.
func (p *program) settled(name string) region {
	p.d.t.Helper()
	r, alike := p.find(name), 1
	p.d.until(name+" to stand still", func() bool {
		now := p.find(name)
		if now == r {
			alike++
		} else {
			r, alike = now, 1
		}
		return alike >= 3
	})
	return r
}

// inView finds a field of the card and turns the wheel until it is in view.
func (p *program) inView(name string) (r region) {
	p.d.t.Helper()
	p.d.until(name+" to come into view", func() bool {
		r = p.settled(name)
		foot := p.find("card commit").y - 24
		if r.y+r.h < foot {
			return true
		}
		p.pointer(r.x+r.w/2, foot-60)
		p.d.run("xdotool", "click", "5")
		return false
	})
	return r
}

// choose clicks on a choice of a field that has a few of them, and waits until it stands
// in the field.
func (p *program) choose(field, label string) {
	p.d.t.Helper()
	p.click(p.inView("field "+field), "1")
	p.click(p.settled("line "+label), "1")
	p.d.until(field+" to hold "+label, func() bool {
		text, _ := p.holds(field)
		return strings.HasPrefix(strings.ToLower(text), strings.ToLower(label))
	})
}

// tick clicks on the box of a field that is yes or nothing, at its left end.
func (p *program) tick(field string) {
	p.d.t.Helper()
	r := p.inView("field " + field)
	p.pointer(r.x+r.h/2, r.y+r.h/2)
	p.d.run("xdotool", "click", "1")
	p.d.until(field+" to be ticked", func() bool { text, _ := p.holds(field); return text == "yes" })
}

// enter clicks into a field of text, drags over what stands in it, types, and waits until
// that stands there.
func (p *program) enter(field, text string) {
	p.d.t.Helper()
	r := p.inView("field " + field)
	if before, _ := p.holds(field); before == "" {
		n := p.count("msg=keyboard field=" + field)
		p.click(r, "1")
		p.d.until("the keyboard to come to "+field, func() bool {
			at, _, _ := p.at()
			return at == field || p.count("msg=keyboard field="+field) > n
		})
	} else {
		y := r.y + r.h/2
		p.pointer(r.x+r.w*0.8, y)
		p.d.run("xdotool", "mousedown", "1")
		p.pointer(r.x+r.w*0.4, y)
		p.pointer(r.x-30, y)
		p.d.until(field+" to be selected", func() bool { text, selected := p.holds(field); return selected == text })
		p.d.run("xdotool", "mouseup", "1")
	}
	p.write(text)
	p.d.until(field+" to hold "+text, func() bool { now, _ := p.holds(field); return now == text })
}

// commit clicks on the button that stores the card.
func (p *program) commit() {
	p.d.t.Helper()
	n := p.count("msg=stored")
	p.click(p.settled("card commit"), "1")
	p.says("msg=stored", n+1)
}

// opens clicks on something that opens a card.
func (p *program) opens(name string) {
	p.d.t.Helper()
	n := p.count("card open")
	p.click(p.settled(name), "1")
	p.says("card open", n+1)
}

// menu chooses a line of a menu in the bar, by two clicks.
func (p *program) menu(title, line string) {
	p.d.t.Helper()
	p.click(p.find("menu "+title), "1")
	p.click(p.settled("line "+line), "1")
}

// cardFrom opens a card by a line of a menu in the bar.
func (p *program) cardFrom(title, line string) {
	p.d.t.Helper()
	n := p.count("card open")
	p.menu(title, line)
	p.says("card open", n+1)
}

// cardOn opens a card by a line of the menu that the other button of the mouse opens on
// something drawn.
func (p *program) cardOn(thing, line string) {
	p.d.t.Helper()
	p.click(p.settled(thing), "3")
	p.opens("line " + line)
}

// addAt opens the menu that the other button of the mouse opens on the strip.
func (p *program) addAt(at time.Time) {
	p.d.t.Helper()
	x, y := p.minute(at)
	p.pointer(x, y)
	p.d.run("xdotool", "click", "3")
}
