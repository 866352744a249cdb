package state

import (
	"encoding/json"
	"errors"
	"fmt"

	"gloamline/geo"
	"gloamline/geo/draft"
	"gloamline/journal"
)

// Keeper holds the drawings that are not stored, as one piece of text, from one session to the
// next. It lies beside the journal and not in it.
type Keeper interface {
	// Load returns what was saved last, nothing if nothing was.
	Load() ([]byte, error)
	// Save puts data in the place of what was saved before, all or nothing; empty data says
	// that there is nothing to keep.
	Save(data []byte) error
}

// keptDrafts is the text. A reader of another version leaves it alone.
type keptDrafts struct {
	Version int         `json:"gloamline_drafts"`
	Open    geo.ID      `json:"open,omitzero"`
	Drafts  []keptDraft `json:"drafts"`
}

type keptDraft struct {
	draft.Kept
	Base   *geo.Beat   `json:"base,omitempty"` // of a standing beat: its sketch when this was begun
	Found  string      `json:"found,omitempty"`
	Traced *tracedFrom `json:"traced,omitempty"`
}

const keptVersion = 1

// SetKeeper says where drawings are laid by, and takes up those that lie there. What cannot be
// read is left where it is, and the error says so: then nothing is laid by in its place.
func (b *BeatDesk) SetKeeper(k Keeper) (err error) {
	b.d.act(func() {
		b.tell()
		var data []byte
		if data, err = k.Load(); err != nil || len(data) == 0 {
			if err == nil {
				b.keeper = k
			}
			b.fault = err
			return
		}
		var kept keptDrafts
		if err = json.Unmarshal(data, &kept); err == nil && kept.Version != keptVersion {
			err = fmt.Errorf("the drawings laid by are of version %d", kept.Version)
		}
		if b.fault = err; err != nil {
			return
		}
		b.keeper = k
		for _, x := range kept.Drafts {
			b.resume(x)
		}
		if dr := b.drawing(kept.Open); dr != nil {
			b.put(dr)
		}
	})
	return err
}

// resume takes a drawing up again, unless one of that beat is there already.
func (b *BeatDesk) resume(x keptDraft) {
	if x.Beat.ID.IsZero() || b.drawing(x.Beat.ID) != nil {
		return
	}
	dr := &drawing{hist: draft.History{Now: draft.Resume(x.Kept)}, found: x.Found}
	if x.Base != nil {
		dr.base = *x.Base
	}
	if x.Traced != nil {
		dr.trace = &tracing{from: *x.Traced}
	}
	if r, err := journal.One[journal.Beat](b.d.j, x.Beat.ID); err == nil {
		dr.stands = true
		if x.Base == nil {
			dr.base = latest(r)
		}
	}
	b.all = append(b.all, dr)
}

// keep lays all drawings by that hold something the journal does not have.
func (b *BeatDesk) keep() {
	if b.keeper == nil {
		return
	}
	out := keptDrafts{Version: keptVersion}
	for _, dr := range b.all {
		if dr.blank() || !dr.changed() {
			continue
		}
		x := keptDraft{Kept: dr.hist.Now.Keep(), Found: dr.found}
		if dr.stands {
			x.Base = &dr.base
		}
		if dr.trace != nil {
			t := dr.trace.keep(dr.hist.Now)
			x.Traced = &t
		}
		out.Drafts = append(out.Drafts, x)
		if dr == b.top {
			out.Open = dr.hist.Now.Beat.ID
		}
	}
	var data []byte
	var err error
	if len(out.Drafts) > 0 {
		data, err = json.Marshal(out)
	}
	b.fault = errors.Join(err)
	if err == nil {
		b.fault = b.keeper.Save(data)
	}
}

// KeepFault says why the drawings could not be laid by, nil if they could. What is drawn is
// there until the window is closed.
func (b *BeatDesk) KeepFault() error { return b.fault }
