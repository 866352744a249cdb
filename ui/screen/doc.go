// Package screen is the window: it lays out the boards, binds keys and menus to the
// commands of ui/state, shows cards, dialogs and messages, and runs the jobs that
// take longer than a frame.
//
// The screen owns no fact about a night. It listens to the Desk, asks it for what
// changed and has it drawn. A job works on its own goroutine, hands back one value
// and comes back to the window's goroutine through post, the only place that does.
//
// Not done: printing (the page is written as PDF for the system's own viewer to
// print), more than one window, a window that remembers its place on the desktop
// (the toolkit cannot ask for it).
package screen
