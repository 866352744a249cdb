package store

import (
	"bufio"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/journal/journaltest"
)

const seedEnv = childEnv + "_SEED"

func init() { children["write"] = writer }

// writer opens or begins a journal and writes nights through a whole Journal,
// as the program does. After each act it says what was acknowledged, on a line:
// the number and identity of the change, then every record it left, those
// removed with a minus.
func writer(path string) {
	s, err := Open(path, Options{})
	if journal.KindOf(err) == journal.NotFound && err != nil {
		s, err = Create(path, Options{Now: time.Now})
	}
	must(err)
	j, err := journal.Open(s, time.Now)
	must(err)
	say := func(line string) {
		_, err := os.Stdout.WriteString(line + "\n")
		must(err)
	}
	say("open")
	acknowledge := func(c journal.Change, err error) {
		must(err)
		if c.ID.IsZero() {
			return // the act changed nothing
		}
		line := fmt.Sprint(c.Seq, " ", c.ID)
		for _, e := range c.Edits {
			line += " " + refText(e)
		}
		say(line)
	}
	seed, err := strconv.ParseUint(os.Getenv(seedEnv), 10, 64)
	must(err)
	w := journaltest.New(seed)
	first := w.Base()
	trip := w.Record(journal.KindTrip).(journal.Trip)
	night := w.Night(trip)
	first = append(first, trip)
	for _, e := range night.Fill(5) {
		first = append(first, e)
	}
	acknowledge(j.Do("begin night", journal.Batch{Put: first}))
	for range 2000 { // far longer than it will live
		switch w.Rand.IntN(8) {
		case 0:
			i := w.Rand.IntN(len(night.Entries))
			c, err := j.Amend(night.Vary(night.Entries[i]))
			acknowledge(c, err)
			if again, err := j.Get(night.Entries[i].Ref()); err == nil {
				night.Entries[i] = again.(journal.Entry)
			}
		case 1:
			acknowledge(j.Undo())
			acknowledge(j.Redo())
		case 2:
			batch := journal.Batch{}
			for _, e := range night.Fill(3) {
				batch.Put = append(batch.Put, e)
			}
			acknowledge(j.Do("import", batch))
		case 3:
			n := journal.Note{Head: journal.Head{ID: w.ID(), Trip: trip.ID, Note: "to be removed", When: night.Entries[0].Base().When}}
			if len(n.When.Anchors) > 0 {
				n.When = journal.Exact(n.When.Lo)
			}
			acknowledge(j.Log(n))
			acknowledge(j.Remove(n.Ref()))
		default:
			acknowledge(j.Log(night.Fill(1)[0]))
		}
	}
}

func refText(e journal.Edit) string {
	r := e.Ref()
	text := fmt.Sprintf("%s/%s/%s", r.Kind, r.Trip, r.ID)
	if e.After.Gone {
		return "-" + text
	}
	return text
}

func refOf(text string) (r journal.Ref, gone bool, err error) {
	text, gone = strings.CutPrefix(text, "-")
	parts := strings.Split(text, "/")
	if len(parts) != 3 {
		return r, gone, errors.New("not a record: " + text)
	}
	r.Kind = journal.Kind(parts[0])
	err = errors.Join(r.Trip.UnmarshalText([]byte(parts[1])), r.ID.UnmarshalText([]byte(parts[2])))
	return r, gone, err
}

const (
	kills        = 200
	killsPerFile = 20 // so that the beginning of a journal is met as well
)

// Ensure that a program killed at any moment loses nothing that was
// acknowledged and leaves no half of a change: after each of 200 kills the
// journal opens, is sound, and holds every acknowledged change and at most one
// more, the one that was stored when the kill came before the word of it.
func TestKill(t *testing.T) {
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	rounds := kills
	if testing.Short() {
		rounds = kills / 10
	}
	k := &killing{t: t, r: rand.New(rand.NewPCG(seed, 0))}
	for round := range rounds {
		if round%killsPerFile == 0 {
			k.begin()
		}
		k.round(seed + uint64(round))
	}
	t.Logf("%d kills: %d before the journal was open, %d before the first change, %d later, %d of them between a change and the word of it; %d changes acknowledged, %d records",
		rounds, k.early, k.opened, k.late, k.silent, k.acknowledged, k.records)
	require.Equal(t, rounds, k.early+k.opened+k.late)
	for what, n := range map[string]int{"early": k.early, "opened": k.opened, "late": k.late} {
		require.NotZero(t, n, "no kill came %s", what)
	}
	require.Greater(t, k.acknowledged, rounds)
}

// killing is a journal that is killed over and over.
type killing struct {
	t    *testing.T
	r    *rand.Rand
	path string
	last uint64               // changes known to be there
	gone map[journal.Ref]bool // every record known to have been, and whether it is removed

	early, opened, late, silent, acknowledged, records int
}

func (k *killing) begin() {
	k.path = filepath.Join(k.t.TempDir(), FileName)
	k.last, k.gone = 0, map[journal.Ref]bool{}
}

// round lets a writer live for a while and looks at what it leaves.
func (k *killing) round(seed uint64) {
	lines := k.run(seed)
	switch len(lines) {
	case 0:
		k.early++
	case 1:
		k.opened++
	default:
		k.late++
	}
	acks := lines[min(1, len(lines)):]
	s, err := Open(k.path, Options{})
	if len(lines) == 0 && journal.KindOf(err) == journal.NotFound && err != nil {
		return // killed before the journal had its name
	}
	require.NoError(k.t, err)
	defer s.Close()
	sound(k.t, s)
	now, err := s.Last()
	require.NoError(k.t, err)
	changes, err := s.Changes(k.last, len(acks)+2)
	require.NoError(k.t, err)
	require.Equal(k.t, now, k.last+uint64(len(changes)))
	require.Contains(k.t, []int{len(acks), len(acks) + 1}, len(changes))
	for i, line := range acks {
		k.acknowledged++
		k.confirm(s, line, changes[i])
	}
	if len(changes) > len(acks) {
		k.silent++
		for _, e := range changes[len(acks)].Edits {
			k.gone[e.Ref()] = e.After.Gone
		}
	}
	for r, gone := range k.gone {
		e, err := s.Get(r)
		require.NoError(k.t, err, "%v", r)
		require.Equal(k.t, gone, e.Gone, "%v", r)
	}
	k.last = now
}

// confirm compares an acknowledgement with the change that is stored.
func (k *killing) confirm(s *Store, line string, c journal.Change) {
	words := strings.Fields(line)
	require.Equal(k.t, words[0], fmt.Sprint(c.Seq))
	require.Equal(k.t, words[1], c.ID.String())
	require.Equal(k.t, len(words)-2, len(c.Edits))
	for _, text := range words[2:] {
		r, gone, err := refOf(text)
		require.NoError(k.t, err)
		k.gone[r] = gone
		k.records++
	}
}

// run starts a writer, kills it at a moment drawn at random, and returns the
// whole lines it said.
func (k *killing) run(seed uint64) []string {
	cmd := child(k.t, "write", k.path)
	cmd.Env = append(cmd.Env, seedEnv+"="+fmt.Sprint(seed))
	out, err := cmd.StdoutPipe()
	require.NoError(k.t, err)
	require.NoError(k.t, cmd.Start())

	// From the start, from the opening, or from some acknowledgement on.
	var after int
	var wait time.Duration
	switch k.r.IntN(4) {
	case 0:
		after, wait = 0, time.Duration(k.r.Int64N(int64(60*time.Millisecond)))
	case 1:
		after, wait = 1, time.Duration(k.r.Int64N(int64(5*time.Millisecond)))
	default:
		after, wait = 2+k.r.IntN(12), time.Duration(k.r.Int64N(int64(4*time.Millisecond)))
	}
	kill := func() {
		time.Sleep(wait)
		cmd.Process.Kill()
	}
	if after == 0 {
		go kill()
	}
	var lines []string
	for in := bufio.NewReader(out); ; {
		line, err := in.ReadString('\n')
		if err != nil {
			break // and drop half a line
		}
		lines = append(lines, strings.TrimSpace(line))
		if len(lines) == after {
			go kill()
		}
	}
	err = cmd.Wait()
	require.Error(k.t, err)
	require.False(k.t, cmd.ProcessState.Exited(), "the writer ended by itself: %v", err)
	return lines
}
