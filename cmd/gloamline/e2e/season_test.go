//go:build e2e

package e2e

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// figures is what gloam season --json says of a journal, as far as the walk checks it.
type figures struct {
	Nights      int
	List        []struct{ Beat string }
	LengthLight struct {
		Fish []struct {
			Evening string
			N       int
			Mm      float64 `json:"fly_mm"`
			Lux     float64
		}
	} `json:"length_light"`
	Cards []struct {
		N      int
		Tables []struct {
			Name string
			Rows []struct {
				Code   string
				Hours  float64
				Nights int
				Fish   float64
			}
		}
	}
}

// gloam runs the command without a window.
func gloam(t *testing.T) func(args ...string) []byte {
	path := filepath.Join(t.TempDir(), "gloam")
	build := exec.Command("go", "build", "-o", path, "gloamline/cmd/gloam")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	out, err := build.CombinedOutput()
	require.NoError(t, err, string(out))
	return func(args ...string) []byte {
		out, err := exec.Command(path, args...).Output()
		require.NoError(t, err, args)
		return out
	}
}

// rowsOf reads a table that was saved, without the lines that say what it is made from.
func rowsOf(t *testing.T, path string) (head string, rows [][]string) {
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	rows, err = r.ReadAll()
	require.NoError(t, err)
	return string(text), rows[1:]
}

// Ensure that nights chosen side by side and a season filtered say in the window, and in the
// files saved from it, what the command says of the same nights.
func TestSeasonWalk(t *testing.T) {
	path := demoJournal(t)
	command := gloam(t)
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	apart := filepath.Join(t.TempDir(), "apart.gloam") // the window holds the other
	require.NoError(t, os.WriteFile(apart, content, 0o644))
	d := newDesktop(t, 1280, 800)
	p := d.launch("-v", "-journal", path, "-night", demoNight, "-look", "dusk")
	p.says("shown", 1)

	// Nights side by side: others chosen, along another axis, a fish pointed at.
	p.key("msg=room name=together", "ctrl+2")
	p.find("together contact ")
	p.click(p.find("picks tick"), "1")
	p.click(p.find("command together.axis-grey"), "1")
	d.still(p)
	fish := p.find("together contact ")
	p.pointer(fish.x+fish.w/2, fish.y+fish.h/2)
	d.still(p)
	d.shot("s1-together-hover")

	// The season of one beat, its question of lengths gone to by the mouse: it stands open for who comes
	// here the first time.
	p.key("msg=room name=season", "ctrl+3")
	p.find("season index card ")
	d.shot("s0-season-first")
	p.press("b")
	d.still(p)
	p.click(p.find("season index card Which length"), "1")
	fly := p.find("season contact ")
	p.pointer(fly.x+fly.w/2, fly.y+fly.h/2)
	d.still(p)
	d.shot("s2-lengths")
	p.key("dialog open", "ctrl+p")
	d.still(p)
	d.shot("s3-page")
	p.key("page saved", "Return")
	p.key("dialog open", "e")
	p.key("season tables saved", "Return")

	var all figures
	require.NoError(t, json.Unmarshal(command("season", "--journal", apart, "--json"), &all))
	name := all.List[0].Beat
	for _, n := range all.List {
		name = min(name, n.Beat)
	}
	var some figures
	require.NoError(t, json.Unmarshal(command("season", "--journal", apart, "--json", "--beat", name), &some))
	require.Less(t, some.Nights, all.Nights)

	pages, err := filepath.Glob(filepath.Join(d.home, "season-*.pdf"))
	require.NoError(t, err)
	require.Len(t, pages, 1)
	text := d.run("pdftotext", pages[0], "-")
	assert.Contains(t, text, "Which length of fly in which light?")
	assert.Contains(t, text, name+"; counted: fish hooked.")
	assert.Contains(t, text, fmt.Sprintf("%d night", some.Nights))

	stem := strings.TrimSuffix(strings.TrimSuffix(pages[0], ".pdf"), "-question-5")
	head, rows := rowsOf(t, stem+"-length.csv")
	assert.Contains(t, head, name+"; counted: fish hooked.")
	for _, c := range some.Cards {
		if c.N != 5 {
			continue
		}
		require.Equal(t, "length", c.Tables[0].Name)
		require.Len(t, rows, len(c.Tables[0].Rows))
		for i, r := range c.Tables[0].Rows {
			assert.Equal(t, r.Code, rows[i][0])
			hours, err := strconv.ParseFloat(rows[i][2], 64)
			require.NoError(t, err)
			assert.InDelta(t, r.Hours, hours, 1e-4*(1+r.Hours))
			assert.Equal(t, strconv.Itoa(r.Nights), rows[i][3])
		}
	}
	_, rows = rowsOf(t, stem+"-fish.csv")
	require.Len(t, rows, len(some.LengthLight.Fish))
	for i, f := range some.LengthLight.Fish {
		assert.Equal(t, f.Evening, rows[i][0])
		assert.Equal(t, strconv.Itoa(f.N), rows[i][1])
	}

	// Later runs, and nights alike, opened one after the other; their tables say what the command says.
	down := func(n int) {
		for range n {
			p.press("Down")
		}
		p.press("Return")
	}
	p.click(p.find("season index card Which length"), "1")
	down(17 - 5)
	d.still(p)
	p.key("dialog open", "e")
	p.key("season tables saved", "Return")
	down(23 - 17)
	d.still(p)
	d.shot("s3-alike")
	p.key("dialog open", "e")
	p.key("season tables saved", "Return")
	for table, card := range map[string]int{"second_run_fly": 17, "second_run_pairs": 17, "alike": 23, "alike_foretold": 23} {
		head, rows := rowsOf(t, stem+"-"+table+".csv")
		assert.Contains(t, head, name+"; counted: fish hooked.", table)
		found := false
		for _, c := range some.Cards {
			for _, x := range c.Tables {
				if c.N != card || x.Name != table {
					continue
				}
				found = true
				require.Len(t, rows, len(x.Rows), table)
				for i, r := range x.Rows {
					assert.Equal(t, r.Code, rows[i][0], table)
					fish, err := strconv.ParseFloat(rows[i][8], 64)
					require.NoError(t, err)
					assert.InDelta(t, r.Fish, fish, 1e-4*(1+r.Fish), table)
				}
			}
		}
		assert.True(t, found, table)
	}

	p.key("look=paper", "ctrl+l")
	d.still(p)
	d.shot("s4-alike-paper")
	p.key("look=lamp", "ctrl+l")
	d.still(p)
	d.shot("s5-alike-lamp")
	p.press("ctrl+q")
	require.NoError(t, p.wait())
	p.sound()
}
