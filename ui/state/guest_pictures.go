package state

import (
	"gloamline/journal"
	"gloamline/journal/album"
)

// keptLarge is how many larger copies of photos are kept for the guest's room, 600 kB at
// most each.
const keptLarge = 48

// larger is the larger copy of a photo, if it was made; if not, it is wanted from now on.
func (g *GuestDesk) larger(p journal.Photo) []byte {
	b, asked := g.large[p.SHA256]
	if !asked {
		g.wanted[p.SHA256] = p
	}
	return b
}

// Enlarge returns work that makes larger copies of the photos shown, from their originals,
// nil if there is none to do. The work may run on any goroutine and touches nothing here;
// what it returns is to be handed to Enlarged.
func (g *GuestDesk) Enlarge() func() map[string][]byte {
	if len(g.wanted) == 0 {
		return nil
	}
	wanted, in := g.wanted, g.d.album
	g.wanted = map[string]journal.Photo{}
	if len(g.large)+len(wanted) > keptLarge {
		clear(g.large)
	}
	for sum := range wanted {
		g.large[sum] = nil // asked for
	}
	return func() map[string][]byte { return largerOf(in, wanted) }
}

// largerOf makes the copies; a photo whose original is not to be had is left out.
func largerOf(in *album.Album, wanted map[string]journal.Photo) map[string][]byte {
	out := map[string][]byte{}
	for sum, p := range wanted {
		if b, err := in.Larger(sum, p.Link); err == nil {
			out[sum] = b
		}
	}
	return out
}

// Enlarged takes larger copies in: they are what is shown, and what leaves, from now on.
func (g *GuestDesk) Enlarged(made map[string][]byte) {
	if len(made) == 0 {
		return
	}
	g.act(func() {
		for sum, b := range made {
			g.large[sum] = b
		}
		g.again()
	})
}
