package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf16"

	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
)

// object is one object of a document: its dictionary as text, and its stream unpacked.
type object struct {
	dict   string
	stream string
}

var (
	objects = regexp.MustCompile(`(?s)\n(\d+) 0 obj\n(.*?)\nendobj`)
	length  = regexp.MustCompile(`/Length (\d+)`)
)

// write writes the pages and reads the document back.
func write(t require.TestingT, o Options, pages ...*draw.List) (file []byte, objs []object) {
	var b bytes.Buffer
	require.NoError(t, Write(&b, pages, o))
	file = b.Bytes()
	require.True(t, bytes.HasPrefix(file, []byte("%PDF-1.")))
	require.True(t, bytes.HasSuffix(bytes.TrimSpace(file), []byte("%%EOF")))
	rest := file
	for {
		at := objects.FindSubmatchIndex(rest)
		if at == nil {
			break
		}
		body := rest[at[4]:at[5]]
		var obj object
		head, stream, ok := bytes.Cut(body, []byte("\nstream\n"))
		obj.dict = string(head)
		if ok {
			// A stream may hold the word endobj: go by its length.
			n, err := strconv.Atoi(length.FindStringSubmatch(obj.dict)[1])
			require.NoError(t, err)
			from := at[4] + len(head) + len("\nstream\n")
			stream = rest[from : from+n]
			obj.stream = string(stream)
			if strings.Contains(obj.dict, "/FlateDecode") {
				z, err := zlib.NewReader(bytes.NewReader(stream))
				require.NoError(t, err)
				plain, err := io.ReadAll(z)
				require.NoError(t, err)
				obj.stream = string(plain)
			}
			at[1] = from + n
		}
		objs = append(objs, obj)
		rest = rest[at[1]:]
	}
	return file, objs
}

// contents is the page streams in order: those that are neither fonts nor pictures.
func contents(objs []object) []string {
	var out []string
	for _, o := range objs {
		if o.stream != "" && !strings.Contains(o.dict, "/Type") && !strings.Contains(o.dict, "/Length1") &&
			!strings.Contains(o.stream, "begincmap") && strings.Contains(o.stream, " M\n") {
			out = append(out, o.stream)
		}
	}
	return out
}

var shown = regexp.MustCompile(`(?s)BT ([-\d.]+) ([-\d.]+) Td \((.*?)\) Tj ET`)

// run is a piece of text on a page.
type run struct {
	x, y float64
	s    string
}

// texts is the text of a page, decoded from UTF-16.
func texts(t require.TestingT, page string) []run {
	var out []run
	for _, m := range shown.FindAllStringSubmatch(page, -1) {
		x, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		y, err := strconv.ParseFloat(m[2], 64)
		require.NoError(t, err)
		raw := strings.NewReplacer(`\\`, `\`, `\(`, `(`, `\)`, `)`, `\r`, "\r").Replace(m[3])
		require.Zero(t, len(raw)%2)
		var units []uint16
		for i := 0; i < len(raw); i += 2 {
			units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
		}
		out = append(out, run{x, y, string(utf16.Decode(units))})
	}
	return out
}

// words is the words of a page's language without the strings, for counting.
func words(page string) []string { return strings.Fields(shown.ReplaceAllString(page, " text ")) }

func count(page, word string) int {
	n := 0
	for _, w := range words(page) {
		if w == word {
			n++
		}
	}
	return n
}

var (
	font  = regexp.MustCompile(`/F\S+ ([\d.]+) Tf`)
	token = regexp.MustCompile(`(?s)BT /F\S+ [\d.]+ Tf ET|BT .*? Tj ET|\bq\b|\bQ\b`)
)

// sizes follows the page as a reader does and gives each text with its font size.
func sizes(page string) []string {
	var out, saved []string
	now := ""
	for _, word := range token.FindAllString(page, -1) {
		switch {
		case word == "q":
			saved = append(saved, now)
		case word == "Q":
			now, saved = saved[len(saved)-1], saved[:len(saved)-1]
		case font.MatchString(word):
			now = font.FindStringSubmatch(word)[1]
		default:
			s := shown.FindStringSubmatch(word)[3]
			out = append(out, strings.ReplaceAll(s, "\x00", "")+strings.TrimSuffix(now, ".00"))
		}
	}
	return out
}

// widths reads the /W array of a CID font, which has entries "first [w w w]" and
// "first last w".
func widths(dict string) map[int]int {
	out := map[int]int{}
	_, w, _ := strings.Cut(dict, "/W [")
	w = strings.NewReplacer("[", " [ ", "]", " ] ").Replace(w)
	var open []int
	in := false
	for _, f := range strings.Fields(w) {
		switch v, err := strconv.Atoi(f); {
		case f == "[":
			in = true
		case f == "]" && !in, err != nil && f != "]":
			return out
		case f == "]":
			in, open = false, nil
		case in:
			out[open[0]] = v
			open[0]++
		default:
			if open = append(open, v); len(open) == 3 {
				for c := open[0]; c <= open[1]; c++ {
					out[c] = v
				}
				open = nil
			}
		}
	}
	return out
}
