package export_test

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"net/url"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/journal"
	"gloamline/journal/memory"
	"gloamline/timeline"
	"gloamline/ui/export"
)

// The facts of the schema of GPX 1.1 (topografix.com/GPX/1/1/gpx.xsd, of 2004), restated: of each element
// its attributes and its children in order. A name ends in ? where it may be missing, in * where there may be any number, else it is
// there once; behind the colon stands the type, another row of this table or one of gpxValues. "any" is not looked into.
var gpxTypes = map[string]struct{ attributes, children string }{
	"gpx":       {"version:one.one creator:string", "metadata?:metadata wpt*:wpt rte*:rte trk*:trk extensions?:any"},
	"metadata":  {"", "name?:string desc?:string author?:person copyright?:copyright link*:link time?:dateTime keywords?:string bounds?:bounds extensions?:any"},
	"wpt":       {"lat:latitude lon:longitude", "ele?:decimal time?:dateTime magvar?:degrees geoidheight?:decimal name?:string cmt?:string desc?:string src?:string link*:link sym?:string type?:string fix?:fix sat?:count hdop?:decimal vdop?:decimal pdop?:decimal ageofdgpsdata?:decimal dgpsid?:station extensions?:any"},
	"rte":       {"", "name?:string cmt?:string desc?:string src?:string link*:link number?:count type?:string extensions?:any rtept*:wpt"},
	"trk":       {"", "name?:string cmt?:string desc?:string src?:string link*:link number?:count type?:string extensions?:any trkseg*:trkseg"},
	"trkseg":    {"", "trkpt*:wpt extensions?:any"},
	"person":    {"", "name?:string email?:email link?:link"},
	"email":     {"id:string domain:string", ""},
	"link":      {"href:uri", "text?:string type?:string"},
	"copyright": {"author:string", "year?:year license?:uri"},
	"bounds":    {"minlat:latitude minlon:longitude maxlat:latitude maxlon:longitude", ""},
}

var (
	decimals = regexp.MustCompile(`^[+-]?(\d+(\.\d*)?|\.\d+)$`) // xsd:decimal has no exponent
	instants = regexp.MustCompile(`^-?\d{4,}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)?$`)
)

func within(lo, hi float64, open bool) func(string) bool {
	return func(s string) bool {
		v, err := strconv.ParseFloat(s, 64)
		return err == nil && decimals.MatchString(s) && v >= lo && (v < hi || !open && v == hi)
	}
}

func whole(hi float64) func(string) bool {
	return func(s string) bool { return !strings.Contains(s, ".") && within(0, hi, false)(s) }
}

var gpxValues = map[string]func(string) bool{
	"string": func(string) bool { return true }, "any": func(string) bool { return true },
	"one.one":  func(s string) bool { return s == "1.1" },
	"decimal":  decimals.MatchString,
	"latitude": within(-90, 90, false), "longitude": within(-180, 180, true), "degrees": within(0, 360, true),
	"count": whole(math.MaxInt32), "station": whole(1023), "year": regexp.MustCompile(`^-?\d{4,}$`).MatchString,
	"fix": func(s string) bool { return slices.Contains([]string{"none", "2d", "3d", "dgps", "pps"}, s) },
	"uri": func(s string) bool { _, err := url.Parse(s); return err == nil },
	"dateTime": func(s string) bool {
		_, err := time.Parse("2006-01-02T15:04:05", strings.TrimRight(s[:min(19, len(s))], "Z"))
		return err == nil && instants.MatchString(s)
	},
}

type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Text     string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

const gpxSpace = "http://www.topografix.com/GPX/1/1"

// gpxFault is what a document has against the schema, nil if nothing.
func gpxFault(text string) error {
	d := xml.NewDecoder(strings.NewReader(text))
	var root element
	if err := d.Decode(&root); err != nil {
		return err
	}
	if _, err := d.Token(); err != io.EOF {
		for err == nil {
			var tok xml.Token
			if tok, err = d.Token(); err == nil {
				if _, more := tok.(xml.StartElement); more {
					return fmt.Errorf("a second root")
				}
			}
		}
	}
	if root.XMLName.Local != "gpx" {
		return fmt.Errorf("the root is %s", root.XMLName.Local)
	}
	return root.fault("gpx")
}

func (e element) fault(kind string) error {
	at := e.XMLName.Local
	if e.XMLName.Space != gpxSpace {
		return fmt.Errorf("%s is of the namespace %q", at, e.XMLName.Space)
	}
	rule, nested := gpxTypes[kind]
	if !nested {
		is, ok := gpxValues[kind]
		if !ok {
			panic("the table has no type " + kind)
		}
		switch {
		case kind == "any":
			return nil
		case len(e.Children) > 0 || len(e.Attrs) > 0:
			return fmt.Errorf("%s is a plain value", at)
		case !is(strings.TrimSpace(e.Text)):
			return fmt.Errorf("%s: %q is no %s", at, e.Text, kind)
		}
		return nil
	}
	if strings.TrimSpace(e.Text) != "" {
		return fmt.Errorf("%s holds loose text %q", at, e.Text)
	}
	have := map[string]string{}
	for _, a := range e.Attrs {
		if a.Name.Space == "xmlns" || a.Name.Local == "xmlns" || a.Name.Space == "http://www.w3.org/2001/XMLSchema-instance" {
			continue
		}
		have[a.Name.Local] = a.Value
	}
	for _, f := range strings.Fields(rule.attributes) {
		name, kind, _ := strings.Cut(f, ":")
		v, ok := have[name]
		if !ok || !gpxValues[kind](v) {
			return fmt.Errorf("%s: the attribute %s=%q is no %s", at, name, v, kind)
		}
		delete(have, name)
	}
	for name := range have {
		return fmt.Errorf("%s has no attribute %s", at, name)
	}
	rest := e.Children
	for _, f := range strings.Fields(rule.children) {
		name, kind, _ := strings.Cut(f, ":")
		many, maybe := strings.HasSuffix(name, "*"), strings.HasSuffix(name, "?")
		name = strings.TrimRight(name, "*?")
		n := 0
		for ; len(rest) > 0 && rest[0].XMLName.Local == name && (many || n == 0); n++ {
			if err := rest[0].fault(kind); err != nil {
				return fmt.Errorf("%s > %w", at, err)
			}
			rest = rest[1:]
		}
		if n == 0 && !many && !maybe {
			return fmt.Errorf("%s lacks %s", at, name)
		}
	}
	if len(rest) > 0 {
		return fmt.Errorf("%s: %s is not there, not then, or not so often", at, rest[0].XMLName.Local)
	}
	return nil
}

// Ensure that whatever a night holds, its GPX keeps to the schema: all nights of the demo, with their pools
// and exactly, the night with a track, names with signs of XML in them, and a journal with hardly anything in it.
func TestGPXKeepsToTheSchema(t *testing.T) {
	for _, show := range []export.Show{{Places: export.PoolPlaces}, {Places: export.ExactPlaces}, everything} {
		require.NoError(t, gpxFault(files(t, show)["gpx"]))
	}
	j, err := journal.Open(memory.New(journal.NewID()), time.Now)
	require.NoError(t, err)
	require.NoError(t, demo.Write(j, demo.Seed))
	trips, err := j.Trips()
	require.NoError(t, err)
	for _, trip := range trips {
		n, err := timeline.Load(j, trip.ID)
		require.NoError(t, err)
		for i := range n.Contacts {
			n.Contacts[i].Note = "a <fish> & \"two\" ]]>\x01 flies"
		}
		var b strings.Builder
		_, err = export.GPX(&b, n, nil, everything)
		require.NoError(t, err)
		require.NoError(t, gpxFault(b.String()), trip.Evening)
	}
}

// Ensure that the check refuses what the schema refuses: each of these differs in one thing from a file that passes.
func TestGPXSchemaRefuses(t *testing.T) {
	good := `<gpx xmlns="` + gpxSpace + `" version="1.1" creator="x"><metadata><name>n</name><time>2026-07-04T22:00:00Z</time></metadata>` +
		`<wpt lat="55" lon="-4.7"><ele>3</ele><time>2026-07-04T22:00:00Z</time><name>fish</name></wpt><trk><name>Anna</name><trkseg><trkpt lat="55" lon="-4"/></trkseg></trk></gpx>`
	require.NoError(t, gpxFault(good))
	for old, bad := range map[string]string{
		gpxSpace:              "http://www.topografix.com/GPX/1/0",
		`version="1.1"`:       `version="1.0"`,
		` creator="x"`:        ``,
		`creator="x"`:         `creator="x" speed="1"`,
		`lat="55" lon="-4.7"`: `lat="91" lon="-4.7"`,
		`lon="-4.7"`:          `lon="180"`,
		`lon="-4"/`:           `/`,
		`<ele>3</ele><time>2026-07-04T22:00:00Z</time>`: `<time>2026-07-04T22:00:00Z</time><ele>3</ele>`,
		`<ele>3</ele>`:      `<ele>3e2</ele>`,
		`<name>fish</name>`: `<name>fish</name><name>fish</name>`,
		`<name>n</name>`:    `<name><b>n</b></name>`,
		`<time>2026-07-04T22:00:00Z</time></metadata>`: `<time>4 July 2026</time></metadata>`,
		`<trk><name>Anna</name>`:                       `<trk>Anna`,
		`</wpt>`:                                       `<speed>1</speed></wpt>`,
		`</gpx>`:                                       `<wpt lat="1" lon="1"/></gpx>`,
	} {
		changed := strings.Replace(good, old, bad, 1)
		require.NotEqual(t, good, changed, old)
		assert.Error(t, gpxFault(changed), bad)
	}
}
