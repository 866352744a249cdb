package words

// Told is an error that says itself what happened and what to do, in two sentences for
// people, where the class of an error says too little. Explain hands them on.
type Told struct{ What, Do string }

// Error returns both sentences.
func (t Told) Error() string { return t.What + " " + t.Do }

// NoBeatYet is why a journal without a beat takes no night.
func NoBeatYet() Told {
	return Told{"A night needs a beat, and this journal has none yet.", "Draw one under Beats, at the left; or read one in: File, Read a beat in …"}
}

// FlyIsKnown is why a fly cannot be removed.
func FlyIsKnown() Told {
	return Told{"Nights in this journal have fished that fly, so it stays with them.", "Retire it instead: it is then no longer offered, and the nights keep it."}
}

// NoNightOpen is why nothing can be written down without a night.
func NoNightOpen() Told {
	return Told{"No night is open, and what is written down belongs to a night.", "Open one at the left, or press Ctrl+N to write up a new one."}
}

// DrawBeatStart, ReadBeatStart and FirstNight are the next steps of an empty journal, on buttons.
func DrawBeatStart() string { return "Draw a beat …" }
func ReadBeatStart() string { return "Read a beat in …" }
func FirstNight() string    { return "Write up the first night …" }

// NoLight and NoLog say what will stand where nothing does while no night is open.
func NoLight() string {
	return "The light of a night stands here: sunset, trees grey, the moon over each pool, and each fly change and fish at its minute."
}
func NoLog() string { return "The log of the night stands here, pool by pool." }

// EmptyJournal stands in place of NoNight while the journal has no night to choose.
func EmptyJournal(hasBeat, readOnly bool) string {
	if readOnly {
		return "This journal has no night, and is open for reading only."
	}
	if hasBeat {
		return "This journal has no night yet. Press Ctrl+N to write up the first."
	}
	return "This journal is empty. A night needs its beat: draw it first, or read the sketch of one in."
}
