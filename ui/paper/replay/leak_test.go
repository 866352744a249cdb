package replay_test

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"io"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/paulmach/orb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/paper"
	"gloamline/ui/paper/replay"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

func id(n byte) journal.ID { return journal.ID{n, 0xfe} }

// A night whose every secret is a word that occurs nowhere else.
const (
	lat, lon = 55.1234, -4.5678
	mark     = "EXIFSECRET"
)

func secretNight(t testing.TB) *timeline.Night {
	t.Helper()
	ring := func(x0, x1 float64) orb.Polygon {
		return orb.Polygon{{{lon + x0, lat}, {lon + x1, lat}, {lon + x1, lat + 0.0002}, {lon + x0, lat + 0.0003}, {lon + x0, lat}}}
	}
	shape := geo.Beat{ID: id(1), Name: "Zwinbeat", River: geo.River{Name: "Qoxwater"}, Zone: "Europe/London", At: geo.Place{Lat: lat, Lon: lon}}
	shape.Pools = []geo.Pool{{ID: id(2), Name: "Vexpool", Order: 1, Outline: ring(0, 0.001)}, {ID: id(3), Name: "Jubpool", Order: 2, Outline: ring(0.0014, 0.003)}}
	shape.Features = []geo.Feature{{ID: id(4), Role: geo.RoleHazard, Name: "Kwyrock", Shape: geo.PointShape(orb.Point{lon, lat})}}
	at := func(h, m int) journal.When { return journal.Exact(time.Date(2026, 7, 4, h, m, 0, 0, time.UTC)) }
	head := func(n, rod byte, w journal.When, note string) journal.Head {
		return journal.Head{ID: id(n), Trip: id(10), Rod: id(rod), When: w, Note: note}
	}
	var pic bytes.Buffer
	img := image.NewRGBA(image.Rect(0, 0, 64, 48))
	for i := range img.Pix {
		img.Pix[i] = uint8(i)
	}
	img.Set(1, 1, color.White)
	require.NoError(t, jpeg.Encode(&pic, img, nil))
	comment := append([]byte{0xff, 0xd8, 0xff, 0xfe, 0, byte(2 + len(mark))}, mark...) // JPEG COM, ITU T.81 B.2.4.5
	thumb := append(comment, pic.Bytes()[2:]...)
	puts := []journal.Record{
		journal.Trip{ID: id(10), Evening: journal.Date{Year: 2026, Month: 7, Day: 4}, Zone: "Europe/London", Beat: id(1), Guide: journal.Of(id(13)),
			Rods: []journal.Rod{{ID: id(20), Person: id(11)}, {ID: id(21), Person: id(12)}}, Note: "Tripsecret"},
		journal.Beat{ID: id(1), Revisions: []journal.BeatRevision{{Shape: shape}}},
		journal.Person{ID: id(11), Name: "Anna"}, journal.Person{ID: id(12), Name: "Hyzperson"}, journal.Person{ID: id(13), Name: "Guxguide"},
		journal.Fly{ID: id(14), Label: "Flysecret", Dresses: []journal.Dress{{Length: journal.Of(units.LengthOf(1.5, units.Inch)), HotSpot: journal.Of("Spotsecret"), Note: "Dresssecret"}}},
		journal.Run{Head: head(30, 20, at(21, 33), ""), Until: journal.Of(at(22, 47)), Pool: id(3)},
		journal.Run{Head: head(31, 21, at(21, 38), ""), Until: journal.Of(at(22, 41)), Pool: id(2)},
		journal.Contact{Head: head(40, 20, at(22, 13), "Mepnote"), Touch: journal.Landed, Pool: journal.Of(id(3)), Fly: journal.Of(id(14)), Tag: journal.Of("Tagsecret"),
			Weight: journal.Of(units.WeightOf(7.31, units.Kilogram)), Length: journal.Of(units.LengthOf(83.7, units.Centimetre)), Spot: journal.Of(geo.Place{Lat: lat + 0.0001, Lon: lon + 0.002})},
		journal.Contact{Head: head(41, 21, at(22, 21), ""), Touch: journal.Landed, Pool: journal.Of(id(2)), Length: journal.Of(units.LengthOf(83.7, units.Centimetre))},
		journal.Note{Head: head(42, 20, at(22, 31), "Privsecret"), Private: true},
		journal.Note{Head: head(43, 20, at(22, 32), "said to Hyzperson at Vexpool")},
		journal.Photo{Head: head(44, 20, at(22, 14), ""), SHA256: strings.Repeat("ab", 32), Name: "Filesecret.jpg", Link: "Linksecret", Thumb: thumb, Of: journal.Of(id(40))},
	}
	j, err := journal.Open(memory.New(id(99)), func() time.Time { return time.Unix(0, 0) })
	require.NoError(t, err)
	_, err = j.Do("set up", journal.Batch{Put: puts})
	require.NoError(t, err)
	n, err := timeline.Load(j, id(10))
	require.NoError(t, err)
	return n
}

// all shows everything there is a choice about.
func all() scene.Shown {
	return scene.Shown{Person: id(11), Pools: scene.PoolNames, Water: true, Places: true, Coordinates: true, People: true, Weights: true, Notes: true, Photo: true}
}

var base64s = regexp.MustCompile(`base64,([A-Za-z0-9+/=]+)`)

// opened is everything that can be read in a file: its bytes, what is packed in them,
// and what is packed in that.
func opened(b []byte) string {
	out := string(b)
	for _, m := range base64s.FindAllSubmatch(b, -1) {
		if inner, err := base64.StdEncoding.DecodeString(string(m[1])); err == nil {
			out += "\n" + opened(inner)
		}
	}
	if bytes.HasPrefix(b, []byte("%PDF")) {
		for rest := b; ; {
			_, after, ok := bytes.Cut(rest, []byte("stream\n"))
			if !ok {
				break
			}
			if z, err := zlib.NewReader(bytes.NewReader(after)); err == nil {
				plain, _ := io.ReadAll(z)
				out += "\n" + string(plain) + "\n" + strings.ReplaceAll(string(plain), "\x00", "") // UTF-16 of plain letters
			}
			rest = after
		}
	}
	if bytes.HasPrefix(b, []byte("\x89PNG\r\n\x1a\n")) { // chunks: length, kind, data, sum
		for p := 8; p+12 <= len(b); {
			n := int(binary.BigEndian.Uint32(b[p:]))
			kind, data := string(b[p+4:p+8]), b[p+8:p+8+n]
			if i := bytes.IndexByte(data, 0); (kind == "zTXt" || kind == "iTXt") && i >= 0 {
				for k := i; k < min(i+6, len(data)); k++ {
					if z, err := zlib.NewReader(bytes.NewReader(data[k:])); err == nil {
						plain, _ := io.ReadAll(z)
						out += string(plain)
					}
				}
			}
			out += "\n" + kind
			p += 12 + n
		}
	}
	return out
}

// exports makes every file there is, opened; under "value" what they are made of.
func exports(t testing.TB, s scene.Shown) map[string]string {
	t.Helper()
	c, _ := scene.Share(secretNight(t), s, words.Prefs{})
	out := map[string]string{}
	value, err := json.Marshal(c)
	require.NoError(t, err)
	out["value"] = string(value)
	if c.Photo != nil {
		out["value"] += string(c.Photo.JPEG)
	}
	pages := scene.ClientPage(c, scene.Paper, words.Prefs{})
	var drawn []string
	for _, p := range pages {
		for i := range p.Len() {
			if o := p.Op(i); o.Kind == draw.TextOp {
				drawn = append(drawn, o.Text.S)
			}
		}
	}
	out["page"] = strings.Join(drawn, "\n")
	put := func(name string, err error, b *bytes.Buffer) {
		require.NoError(t, err)
		out[name] = opened(b.Bytes())
	}
	var pdf, html bytes.Buffer
	put("pdf", paper.PDF(&pdf, scene.ClientSaid(c), pages), &pdf)
	put("html", replay.Write(&html, c, words.Prefs{}), &html)
	for i, p := range pages {
		var png, svg bytes.Buffer
		put(fmt.Sprint("png", i), paper.PNG(&png, p, 1), &png)
		put(fmt.Sprint("svg", i), paper.SVG(&svg, scene.ClientSaid(c), p), &svg)
	}
	return out
}

// secrets of each choice: what hides them, and what must then be nowhere.
var secrets = []struct {
	name  string
	hide  func(*scene.Shown)
	words []string
}{
	{"pools", func(s *scene.Shown) { s.Pools = "" }, []string{"Jubpool"}},
	{"water", func(s *scene.Shown) { s.Water = false }, []string{"Zwinbeat", "Qoxwater"}},
	{"people", func(s *scene.Shown) { s.People = false }, []string{"Hyzperson"}},
	{"weights", func(s *scene.Shown) { s.Weights = false }, []string{"7.31 kg", "83.7 cm"}},
	{"notes", func(s *scene.Shown) { s.Notes = false }, []string{"Mepnote"}},
	{"coordinates", func(s *scene.Shown) { s.Coordinates = false }, []string{"55.1234", "-4.5678"}},
	{"places", func(s *scene.Shown) { s.Places = false }, []string{"55.1234", "23:13", "the water runs"}},
}

// Ensure that what is hidden is in no export and not in the value they are made of, and
// that the same search finds it in each of them where it is shown.
func TestNothingHiddenLeaves(t *testing.T) {
	open := exports(t, all())
	hidden := exports(t, scene.Shown{Person: id(11)})
	for _, s := range secrets {
		one := all()
		s.hide(&one)
		shut := exports(t, one)
		for _, secret := range s.words {
			for name, text := range open {
				if strings.HasPrefix(name, "png") || name == "value" && secret == "the water runs" {
					continue // letters are pixels there; see TestPNGHasNoText
				}
				if strings.HasPrefix(name, "svg") || name == "page" {
					continue // on one sheet of several; asked of the page below
				}
				assert.Contains(t, text, secret, "control: %s in %s", secret, name)
			}
			assert.Contains(t, open["page"], secret, "control")
			for name, text := range shut {
				assert.NotContains(t, text, secret, "%s hidden, in %s", s.name, name)
			}
			for name, text := range hidden {
				assert.NotContains(t, text, secret, "all hidden, in %s", name)
			}
		}
	}
}

// Ensure that what nobody is ever shown leaves by no way.
func TestNeverLeaves(t *testing.T) {
	never := []string{mark, "Privsecret", "Filesecret", "Linksecret", "Tagsecret", "Flysecret", "Spotsecret", "Dresssecret", "Guxguide", "Kwyrock",
		id(40).String(), id(11).String(), "Europe/London", strings.Repeat("ab", 32)}
	for _, s := range []scene.Shown{all(), {}} {
		for name, text := range exports(t, s) {
			for _, secret := range never {
				assert.NotContains(t, text, secret, name)
			}
		}
	}
}

// Ensure that the search opens what it says it opens: a comment in the photo of the
// journal is found there, and text in a packed PNG chunk is.
func TestOpenedFindsMarks(t *testing.T) {
	n := secretNight(t)
	for _, e := range n.Log.Entries {
		if p, ok := e.(journal.Photo); ok {
			packed := "data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(p.Thumb)
			assert.NotContains(t, packed, mark)
			assert.Contains(t, opened([]byte(packed)), mark)
		}
	}
	var z bytes.Buffer
	w := zlib.NewWriter(&z)
	_, _ = w.Write([]byte(mark))
	require.NoError(t, w.Close())
	data := append([]byte("Comment\x00\x00"), z.Bytes()...)
	png := append([]byte("\x89PNG\r\n\x1a\n"), binary.BigEndian.AppendUint32(nil, uint32(len(data)))...)
	png = append(append(append(png, "zTXt"...), data...), 0, 0, 0, 0)
	assert.NotContains(t, string(png), mark)
	assert.Contains(t, opened(png), mark)
}

// Ensure that a PNG is pixels alone: no chunk that holds words or times.
func TestPNGHasNoText(t *testing.T) {
	for name, text := range exports(t, all()) {
		if strings.HasPrefix(name, "png") {
			for _, kind := range []string{"tEXt", "zTXt", "iTXt", "eXIf", "tIME"} {
				assert.NotContains(t, text, "\n"+kind, name)
			}
			assert.Contains(t, text, "\nIHDR")
		}
	}
}

// Ensure that a note which names somebody hidden is held back and counted.
func TestNotesThatNameSomebodyAreHeld(t *testing.T) {
	n := secretNight(t)
	_, held := scene.Share(n, all(), words.Prefs{})
	assert.Zero(t, held)
	s := all()
	s.People = false
	c, held := scene.Share(n, s, words.Prefs{})
	assert.Equal(t, 1, held)
	require.Len(t, c.Notes, 1)
	assert.Equal(t, "Mepnote", c.Notes[0].Text)
}
