package state

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/journal"
	"gloamline/ui/words"
)

// Ensure that every example of the sheet is read to the last word, on a night of Anna and
// Colm with the pools that it names: an entry, or a choice of whose it is.
func TestEveryExampleReads(t *testing.T) {
	for _, e := range words.ScribbleExamples() {
		require.NotEmpty(t, e.What)
		for _, text := range e.Lines {
			k := newKit(t)
			k.night(true)
			k.add(journal.KindRig, "rod", "Anna", "when", "21:50", "flies.0", "3/4 in slim dark", "flies.1", "½ full pale")
			k.add(journal.KindRig, "rod", "Colm", "when", "21:50", "flies.0", "3/4 in slim dark", "flies.1", "½ full pale")
			s := k.d.NewScribble()
			s.Set(text)
			require.Len(t, s.Lines(), 1)
			require.NotEmpty(t, s.Lines()[0].Clauses, text)
			for _, w := range s.Lines()[0].Words {
				assert.NotEqual(t, UnreadWord, w.Kind, "%s: %s", text, w.Text)
			}
			for _, c := range s.Lines()[0].Clauses {
				switch c.State {
				case Settled:
					assert.NotEmpty(t, c.Says, text)
				case Open:
					assert.Equal(t, []string{"Anna", "Colm", words.AsNote()}, c.Ways, text)
				default:
					assert.Fail(t, "not read", "%s: %s", text, c.Why)
				}
			}
		}
	}
	assert.NotEmpty(t, words.ScribbleRules())
}
