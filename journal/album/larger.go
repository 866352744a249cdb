package album

import (
	"errors"
	"fmt"

	"gloamline/journal/photo"
)

// largerSize is a picture that fills half a screen, or the width of a page, sharply.
var largerSize = photo.Small{Side: 1440, MaxBytes: 600_000, MaxPixels: 100_000_000}

// ErrNoOriginal is returned where the original of a photo is not to be had.
var ErrNoOriginal = errors.New("the original is not there")

// Larger makes a copy of the original of that sum, 1440 pixels at most, upright, pixels
// alone, as JPEG. The original is sought in the folder (a may be nil), then at link, where
// it counts only while its bytes are the same. It may be called from any goroutine.
func (a *Album) Larger(sum, link string) ([]byte, error) {
	path := link
	if a != nil {
		if at, ok := a.Find(sum); ok {
			path = at
		}
	}
	if path == "" || !isSum(sum) {
		return nil, ErrNoOriginal
	}
	f, info, err := open(path)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrNoOriginal, err)
	}
	defer f.Close()
	p, err := photo.Read(f, info.Size())
	switch {
	case err != nil:
		return nil, err
	case p.SHA256 != sum:
		return nil, ErrChanged
	case p.Format != photo.JPEG:
		return nil, fmt.Errorf("no picture is made of a %s", p.Format)
	}
	return photo.Thumbnail(f, p.Orientation, largerSize)
}
