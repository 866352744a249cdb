// Package state is what the windows show and everything a person can do, without
// a window: the list of nights, the open night with its cursor and selection, the
// cards on which things are written down, and the table of commands. A whole night
// can be written up through it in a test.
//
// The journal owns what is stored. A Desk owns where a person is: which night is
// open, the instant of the cursor, what is selected, the card that is open, the
// look and the part of the strip in view. Everything else is a function of these
// and is built anew after a change: a view asks for it when told (OnChange) and
// keeps nothing.
//
// An entry can be lifted off its moment or place and carried (Lift, Carry, CarryTo).
// Meanwhile the open night is a preview with the entry where it is carried; PutDown
// stores that as one change, or says why it cannot lie there and leaves it where it was.
// Moments move to the full minute and as a whole: exact stays exact, about stays about,
// and one that hung on another entry stands by itself from then on. What hangs on the
// entry itself follows it, as always.
//
// Instants are UTC; texts on cards are local times of the night. Lengths, weights
// and temperatures keep the unit in which they were typed.
//
// A Desk and its cards are used from one goroutine. Nothing here starts one, reads a
// clock (now is given) or touches a file.
//
// Not done here: drawing, files and their dialogs. The commands for them stand in
// the table and are bound by the window (Bind).
package state
