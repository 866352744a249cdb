package replay_test

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"image"
	"image/color"
	"image/jpeg"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
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

func secretNight(t testing.TB) *timeline.Night { return secretNightAs(t, false) }

// secretNightAs is that night, or its twin: alike but for what can be hidden.
func secretNightAs(t testing.TB, twin bool) *timeline.Night {
	t.Helper()
	as := func(one, other string) string {
		if twin {
			return other
		}
		return one
	}
	lat, kilos, cm := lat, 7.31, 83.7
	if twin {
		lat, kilos, cm = lat+0.01, 2.25, 51.2
	}
	ring := func(x0, x1 float64) orb.Polygon {
		return orb.Polygon{{{lon + x0, lat}, {lon + x1, lat}, {lon + x1, lat + 0.0002}, {lon + x0, lat + 0.0003}, {lon + x0, lat}}}
	}
	shape := geo.Beat{ID: id(1), Name: as("Zwinbeat", "Ost"), River: geo.River{Name: as("Qoxwater", "Ulm")}, Zone: "Europe/London", At: geo.Place{Lat: units.Degrees(lat), Lon: lon}}
	shape.Pools = []geo.Pool{{ID: id(2), Name: as("Vexpool", "Ebb"), Order: 1, Outline: ring(0, 0.001)}, {ID: id(3), Name: as("Jubpool", "A long name"), Order: 2, Outline: ring(0.0014, 0.003)}}
	shape.Features = []geo.Feature{{ID: id(4), Role: geo.RoleHazard, Name: as("Kwyrock", "Ford"), Shape: geo.PointShape(orb.Point{lon, lat})}}
	at := func(h, m int) journal.When { return journal.Exact(time.Date(2026, 7, 4, h, m, 0, 0, time.UTC)) }
	head := func(n, rod byte, w journal.When, note string) journal.Head {
		return journal.Head{ID: id(n), Trip: id(10), Rod: id(rod), When: w, Note: note}
	}
	thumb := markedPicture(t, 64, 48)
	puts := []journal.Record{
		journal.Trip{ID: id(10), Evening: journal.Date{Year: 2026, Month: 7, Day: 4}, Zone: "Europe/London", Beat: id(1), Guide: journal.Of(id(13)),
			Rods: []journal.Rod{{ID: id(20), Person: id(11)}, {ID: id(21), Person: id(12)}}, Note: as("Tripsecret", "")},
		journal.Beat{ID: id(1), Revisions: []journal.BeatRevision{{Shape: shape}}},
		journal.Person{ID: id(11), Name: "Anna"}, journal.Person{ID: id(12), Name: as("Hyzperson", "Io")}, journal.Person{ID: id(13), Name: as("Guxguide", "Una")},
		journal.Fly{ID: id(14), Label: as("Flysecret", "x"), Dresses: []journal.Dress{{Length: journal.Of(units.LengthOf(1.5, units.Inch)), HotSpot: journal.Of("Spotsecret"), Note: "Dresssecret"}}},
		journal.Run{Head: head(30, 20, at(21, 33), ""), Until: journal.Of(at(22, 47)), Pool: id(3)},
		journal.Run{Head: head(31, 21, at(21, 38), ""), Until: journal.Of(at(22, 41)), Pool: id(2)},
		journal.Contact{Head: head(40, 20, at(22, map[bool]int{false: 13, true: 14}[twin]), as("Mepnote", "of trout")), Touch: journal.Landed, Pool: journal.Of(id(3)), Fly: journal.Of(id(14)), Tag: journal.Of("Tagsecret"),
			Weight: journal.Of(units.WeightOf(kilos, units.Kilogram)), Length: journal.Of(units.LengthOf(cm, units.Centimetre)), Spot: journal.Of(geo.Place{Lat: units.Degrees(lat + 0.0001), Lon: lon + 0.002})},
		journal.Contact{Head: head(41, 21, at(22, 21), ""), Touch: journal.Landed, Pool: journal.Of(id(2)), Length: journal.Of(units.LengthOf(cm, units.Centimetre))},
		journal.Note{Head: head(42, 20, at(22, 31), as("Privsecret", "p")), Private: true},
		journal.Note{Head: head(43, 20, at(22, 32), as("said to Hyzperson at Vexpool", "nobody"))},
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

// markedPicture is a JPEG with a comment that is a secret.
func markedPicture(t testing.TB, w, h int) []byte {
	var pic bytes.Buffer
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range img.Pix {
		img.Pix[i] = uint8(i)
	}
	img.Set(1, 1, color.White)
	require.NoError(t, jpeg.Encode(&pic, img, nil))
	comment := append([]byte{0xff, 0xd8, 0xff, 0xfe, 0, byte(2 + len(mark))}, mark...) // JPEG COM, ITU T.81 B.2.4.5
	return append(comment, pic.Bytes()[2:]...)
}

// larger gives a larger picture than the journal holds, with a secret in it too.
func larger(t testing.TB) func(journal.Photo) []byte {
	return func(journal.Photo) []byte { return markedPicture(t, 160, 120) }
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

// handouts are all that can be shown: the night, and all nights on the pool of its first fish.
func handouts(n *timeline.Night, s scene.Shown) map[string]scene.Handout {
	c, _ := scene.Share(n, s, words.Prefs{})
	return map[string]scene.Handout{"night": c, "past": scene.SharePast([]*timeline.Night{n}, id(3), s, words.Prefs{})}
}

// files makes every file there is of a handout, by the road that the window and the command
// take; without endings in every format.
func files(t testing.TB, h scene.Handout, endings ...string) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	dir := t.TempDir()
	if endings == nil {
		endings = replay.Endings
	}
	for _, e := range endings {
		names, err := replay.Save(filepath.Join(dir, "out"+e), h, scene.Paper, words.Prefs{})
		require.NoError(t, err)
		for _, name := range names {
			b, err := os.ReadFile(name)
			require.NoError(t, err)
			out[strings.TrimPrefix(filepath.Base(name), "out")] = b
		}
	}
	return out
}

// said is every text drawn on lists.
func said(lists ...*draw.List) string {
	var out []string
	for _, l := range lists {
		for i := range l.Len() {
			if o := l.Op(i); o.Kind == draw.TextOp {
				out = append(out, o.Text.S)
			}
		}
	}
	return strings.Join(out, "\n")
}

// exports makes every file there is, opened; under "value" what they are made of, under
// "page" and "screen" what is drawn there.
func exports(t testing.TB, s scene.Shown, endings ...string) map[string]string {
	t.Helper()
	out := map[string]string{}
	for what, h := range handouts(secretNight(t), s) {
		value, err := json.Marshal(h)
		require.NoError(t, err)
		out[what+" value"] = string(value)
		for _, p := range h.Photos() {
			out[what+" value"] += string(p.JPEG)
		}
		out[what+" page"] = said(h.Pages(scene.Paper, words.Prefs{})...)
		for cursor := scene.ClientWhole; cursor <= h.End(); cursor += 5 {
			for fish := 0; fish <= len(h.Seen()); fish++ {
				out[what+" screen"] += said(h.Show(draw.Size{W: 1440, H: 900}, scene.Dusk, scene.ClientView{Cursor: cursor, Fish: fish, Keys: true}).List)
			}
		}
		for name, b := range files(t, h, endings...) {
			out[what+" "+name] = opened(b)
		}
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
	letters := []string{".pdf", ".svg", ".html"} // of pixels see TestTwins
	open := exports(t, all(), letters...)
	hidden := exports(t, scene.Shown{Person: id(11)}, letters...)
	for _, s := range secrets {
		one := all()
		s.hide(&one)
		shut := exports(t, one, letters...)
		for _, secret := range s.words {
			for name, text := range open {
				what, format, _ := strings.Cut(name, " ")
				switch {
				case what == "past" && slices.Contains([]string{"people", "notes"}, s.name), what == "past" && slices.Contains([]string{"the water runs", "83.7 cm"}, secret):
					continue // not told of a pool
				case secret == "the water runs" && format == "value", s.name == "notes" && format == "screen":
					continue
				case strings.Contains(name, ".svg"):
					continue // on one sheet of several; asked of the page
				}
				assert.Contains(t, text, secret, "control: %s in %s", secret, name)
			}
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
	large := all()
	large.Larger = larger(t)
	for _, s := range []scene.Shown{all(), large, {}} {
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
	for name, text := range exports(t, all(), ".png") {
		if strings.Contains(name, ".png") {
			for _, kind := range []string{"tEXt", "zTXt", "iTXt", "eXIf", "tIME"} {
				assert.NotContains(t, text, "\n"+kind, name)
			}
			assert.Contains(t, text, "\nIHDR")
		}
	}
}

// Ensure that two nights which differ in all that can be hidden leave as the same bytes
// once it is hidden, whatever the format: of letters that are pixels too nothing is left.
// Shown, each format tells them apart.
func TestTwins(t *testing.T) {
	for _, open := range []bool{false, true} {
		s := scene.Shown{Person: id(11)}
		if open {
			s = all()
			s.Photo = false
		}
		one, other := handouts(secretNightAs(t, false), s), handouts(secretNightAs(t, true), s)
		for what := range one {
			a, b := files(t, one[what]), files(t, other[what])
			require.NotEmpty(t, a)
			for name, bytes := range a {
				assert.Equal(t, !open, string(bytes) == string(b[name]), "%s%s, shown: %v", what, name, open)
			}
		}
	}
}

// Ensure that a GIF is pictures and times alone: no comment, no text, of applications'
// blocks the one that has it play again.
func TestGIFHasNoText(t *testing.T) {
	for what, h := range handouts(secretNight(t), all()) {
		b := files(t, h, ".gif")[".gif"]
		kinds := gifBlocks(t, b)
		assert.Positive(t, kinds[0x2c], "%s: pictures", what)
		assert.Equal(t, kinds[0x2c], kinds[0xf9], "%s: a time for each", what)
		assert.Zero(t, kinds[0xfe]+kinds[0x01], "%s: comment or text", what)
		assert.Equal(t, 1, kinds[0xff], what)
		assert.Equal(t, 1, bytes.Count(b, []byte("NETSCAPE2.0")), what)
		// Control: a comment laid into it is seen.
		with := append(append(slices.Clone(b[:len(b)-1]), 0x21, 0xfe, byte(len(mark))), append([]byte(mark), 0, 0x3b)...)
		assert.Equal(t, 1, gifBlocks(t, with)[0xfe])
	}
}

// gifBlocks counts the blocks of a GIF by kind: 0x2c pictures, else the label of an
// extension (GIF89a, sections 20 to 26).
func gifBlocks(t testing.TB, b []byte) map[byte]int {
	t.Helper()
	out := map[byte]int{}
	table := func(flags byte) int {
		if flags&0x80 == 0 {
			return 0
		}
		return 3 << (flags&7 + 1)
	}
	p := 13 + table(b[10])
	skip := func() {
		for b[p] != 0 {
			p += 1 + int(b[p])
		}
		p++
	}
	for b[p] != 0x3b {
		switch b[p] {
		case 0x21:
			out[b[p+1]]++
			p += 2
			skip()
		case 0x2c:
			out[0x2c]++
			p += 10 + table(b[p+9]) + 1
			skip()
		default:
			t.Fatalf("no block of a GIF at %d", p)
		}
	}
	require.Equal(t, len(b)-1, p, "nothing follows")
	return out
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
