package pen

import "time"

// Question is a doubt that only the person can settle: what was typed has two
// readings. Until answered the likelier one stands.
type Question struct {
	Text    string
	Answers []Answer
}

// Answer is one reading: Text is what stands in its place then.
type Answer struct {
	Label string
	Text  string
	At    time.Time
}
