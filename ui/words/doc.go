// Package words owns every sentence, unit and local time that a person reads, in
// plain British English and in one place. It turns values into words and nothing
// else: it decides nothing, stores nothing and reads no clock.
//
// Functions are named by what they say. A line is one line without a full stop; a
// sentence begins with a capital and ends with a full stop; a tip stands by the
// pointer. Local time is the clock of the night's zone, 24 hours, with its offset only where
// the clock shows the same time twice that night. Light is said as a rung first, then
// how much darker than grey trees it is, then in lux with two digits at most.
//
// Units are as typed unless Prefs say otherwise. The names of the rungs of light can
// be replaced there too.
//
// Nothing here says that anything is safe or legal: cautions remind, and defer to
// local byelaws, the owner of the water and licensed practice.
package words
