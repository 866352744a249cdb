package state

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// Ensure that a strip shown closer goes along with a cursor that leaves it, as wide as
// before, and stays where it is for a cursor within.
func TestStripGoesAlongWithCursor(t *testing.T) {
	k := newKit(t)
	k.night(false)
	k.d.ZoomStrip(0.25, k.at("23:00"))
	from, to := k.d.StripWindow()
	k.d.SetCursor(from.Add(time.Minute))
	now, _ := k.d.StripWindow()
	assert.Equal(t, from, now)

	k.d.SetCursor(to.Add(time.Minute))
	now, until := k.d.StripWindow()
	assert.True(t, now.Before(k.d.Cursor()) && until.After(k.d.Cursor()))
	assert.Equal(t, to.Sub(from), until.Sub(now))
	k.d.PanStrip(3 * time.Hour)
	away, _ := k.d.StripWindow()
	assert.True(t, away.After(k.d.Cursor()), "looking elsewhere is allowed")
}
