package words

import "fmt"

// PlayingAt says how fast the night passes: Playing, 10 minutes a second.
func PlayingAt(rate int) string {
	if rate == 1 {
		return "Playing, a minute a second. U is faster, D slower, Space stops."
	}
	return fmt.Sprintf("Playing, %d minutes a second. U is faster, D slower, Space stops.", rate)
}

// Stopped says that playing was stopped.
func Stopped() string { return "Stopped. Space goes on from here." }

// PlayedOut says that playing came to the end.
func PlayedOut() string { return "The night has passed. Space plays it from the start." }
