package state

import (
	"slices"
	"strings"
	"time"

	"gloamline/journal"
	"gloamline/journal/pen"
	"gloamline/ui/words"
)

// Care is what the header of the open night says quietly of care: water noted as rising or
// warm, and the user's own notes on the beat. Most nights have none.
func (d *Desk) Care() []string {
	if d.night == nil {
		return nil
	}
	out := words.NightCautions(d.night, d.prefs)
	if b, err := journal.One[journal.Beat](d.j, d.night.Log.Trip.Beat); err == nil {
		if s := words.NoticesHeader(d.night.Beat.Name, b.Notices, d.today()); s != "" {
			out = append(out, s)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return []string{strings.Join(out, " ")} // one paragraph: the header has little room
}

// today is the date where the person is.
func (d *Desk) today() journal.Date { return journal.DateOf(d.now(), d.now().Location()) }

// NoticedBeat is a beat with the notes kept on it.
type NoticedBeat struct {
	ID      journal.ID
	Name    string
	Notices []journal.Notice
}

// NoticedBeats lists all beats by name, that of the open night first.
func (d *Desk) NoticedBeats() ([]NoticedBeat, error) {
	beats, err := journal.All[journal.Beat](d.j)
	if err != nil {
		return nil, err
	}
	var out []NoticedBeat
	for _, b := range beats {
		out = append(out, NoticedBeat{b.ID, b.On(d.today()).Name, b.Notices})
	}
	here := journal.ID{}
	if d.night != nil {
		here = d.night.Log.Trip.Beat
	}
	slices.SortFunc(out, func(a, b NoticedBeat) int {
		if (a.ID == here) != (b.ID == here) {
			if a.ID == here {
				return -1
			}
			return 1
		}
		return strings.Compare(a.Name, b.Name)
	})
	return out, nil
}

// ReadNotice reads the fields of a note; empty checked is today, empty due none.
func (d *Desk) ReadNotice(text, said, checked, due string) (n journal.Notice, err error) {
	n = journal.Notice{Words: strings.TrimSpace(text), Said: strings.TrimSpace(said), Checked: d.today()}
	if n.Words == "" {
		return n, words.NoticeEmpty()
	}
	for _, f := range []struct {
		text string
		to   *journal.Date
	}{{checked, &n.Checked}, {due, &n.Due}} {
		if t := strings.TrimSpace(f.text); t != "" {
			if *f.to, err = pen.ParseDate(t, d.today()); err != nil {
				return n, words.NoticeDate()
			}
		}
	}
	return n, nil
}

// Today prints today as a field reads it.
func (d *Desk) Today() string { return d.today().String() }

// SetNotices stores the notes on a beat, as one change.
func (d *Desk) SetNotices(beat journal.ID, list []journal.Notice) (err error) {
	d.act(func() {
		var b journal.Beat
		if b, err = journal.One[journal.Beat](d.j, beat); err != nil {
			return
		}
		b.Notices = list
		_, err = d.j.Amend(b)
		d.tell(NightOpen)
	})
	return err
}

// Reminders lists the user's own days by which something is due in a year or soon after it,
// the earliest first.
func (d *Desk) Reminders(year int) []string {
	beats, err := d.NoticedBeats()
	if err != nil {
		return nil
	}
	type due struct {
		at   journal.Date
		line string
	}
	var list []due
	end := journal.Date{Year: year + 1, Month: time.July, Day: 1}
	for _, b := range beats {
		for _, n := range b.Notices {
			if n.Due.Year >= year && n.Due.Before(end) {
				list = append(list, due{n.Due, words.NoticeLine(b.Name, n, d.today())})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b due) int {
		switch {
		case a.at.Before(b.at):
			return -1
		case b.at.Before(a.at):
			return 1
		}
		return 0
	})
	var out []string
	for _, l := range list {
		out = append(out, l.line)
	}
	return out
}
