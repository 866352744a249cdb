package demo

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"

	"gloamline/journal"
)

//go:embed photo/*.jpg
var photos embed.FS

// Original is a picture that the demo holds a small copy of, as it belongs beside the
// journal. SHA256 is in hexadecimal digits.
type Original struct {
	Name, SHA256 string
	JPEG         []byte
}

// pictures are those of the demo, without ending. They are drawn (photo/make.go).
var pictures = []string{"fish-1", "fish-2"}

// Originals are the pictures whose small copies are in the demo.
func Originals() ([]Original, error) {
	var out []Original
	for _, name := range pictures {
		b, err := photos.ReadFile("photo/" + name + ".jpg")
		if err != nil {
			return nil, err
		}
		sum := sha256.Sum256(b)
		out = append(out, Original{name + ".jpg", hex.EncodeToString(sum[:]), b})
	}
	return out, nil
}

// photo notes the picture of a fish. Its identity is drawn apart, so that all others are
// as they were without it.
func (n *night) photo(of journal.Contact, at string, which int) error {
	all, err := Originals()
	if err != nil {
		return err
	}
	small, err := photos.ReadFile("photo/" + pictures[which] + "-small.jpg")
	if err != nil {
		return err
	}
	h := journal.Head{Trip: n.trip.ID, Rod: of.Rod, When: journal.Exact(n.clock(at)), From: journal.Origin{How: "memory"}, Note: "A drawing, made for this demo."}
	for i := range h.ID {
		h.ID[i] = byte(n.m.apart.UintN(256))
	}
	n.add(journal.Photo{Head: h, SHA256: all[which].SHA256, Name: all[which].Name, Copied: true, Thumb: small, Of: journal.Of(of.ID)})
	return nil
}
