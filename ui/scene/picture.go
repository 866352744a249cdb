package scene

import (
	"bytes"
	"crypto/sha256"
	"image"
	"image/jpeg"
	"slices"
	"sync"
)

// What is decoded of a picture that is shown to somebody: such pictures are made small by
// package album, and nothing larger is meant to come.
const (
	maxPictureBytes = 1 << 20
	maxPictureSide  = 2048
	keptPictures    = 8 // decoded ones; each may take 8 MB
)

// pictures keeps the decoded ones used last, and what they leave as. It is disposable.
var pictures = struct {
	sync.Mutex
	of   map[thumbKey]image.Image
	used []thumbKey // the latest last
	bare map[[sha256.Size]byte][]byte
}{of: map[thumbKey]image.Image{}, bare: map[[sha256.Size]byte][]byte{}}

// picture decodes a picture that is shown to somebody, larger than a thumbnail; nil where
// it cannot be read. In the lamp look it is red on black.
func picture(data []byte, look Look) image.Image {
	if len(data) == 0 || len(data) > maxPictureBytes {
		return nil
	}
	key := thumbKey{sha256.Sum256(data), look.Name == Lamp.Name}
	pictures.Lock()
	defer pictures.Unlock()
	pictures.used = append(slices.DeleteFunc(pictures.used, func(k thumbKey) bool { return k == key }), key)
	if img, ok := pictures.of[key]; ok {
		return img
	}
	if len(pictures.used) > keptPictures {
		delete(pictures.of, pictures.used[0])
		pictures.used = slices.Delete(pictures.used, 0, 1)
	}
	img := decodeJPEG(data, maxPictureSide)
	if img != nil && key.lamp {
		img = reddened(img)
	}
	pictures.of[key] = img
	return img
}

// bare is a picture encoded anew, so that nothing but its pixels is in it; nil for one that
// cannot be read.
func bare(data []byte) []byte {
	img := picture(data, Paper)
	if img == nil {
		return nil
	}
	sum := sha256.Sum256(data)
	pictures.Lock()
	defer pictures.Unlock()
	if b, ok := pictures.bare[sum]; ok {
		return b
	}
	var b bytes.Buffer
	if jpeg.Encode(&b, img, &jpeg.Options{Quality: 88}) != nil {
		return nil
	}
	if len(pictures.bare) >= 2*mostPictures {
		clear(pictures.bare)
	}
	pictures.bare[sum] = b.Bytes()
	return b.Bytes()
}
