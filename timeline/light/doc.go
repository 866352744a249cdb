// Package light says how much light falls on the water of a pool: horizontal
// illuminance in lux, from sun, moon and night sky through cloud, skyline and trees,
// with a band that says how far to trust it.
//
// # Model
//
// Clear sky: Brown's curve of 1952 as refitted by the US Naval Observatory (1996),
// less its own night floor, at the geometric altitude of the sun; the same curve
// scaled to 0.269 lx for a full moon at the zenith, with the phase law of Allen
// (1976) and the square of the parallax; and 6e-4 lx of night sky. Cloud: the law of
// Kasten & Czeplak (1980). Skyline: the sky left open counts by its cosine-weighted
// share, and the moon's direct beam only while its disc clears the skyline. Trees: one
// factor.
//
// # Accuracy
//
// The clear-sky model passes published figures (testdata/light) within the factors
// allowed there: 1.1 to 1.5 for twilight and moon, 2 to 4 for the night sky. Three
// twilight curves in use agree within 5 % down to -9 degrees and 40 % at -15. Cloud,
// trees and the widths of the bands are judgement on thin evidence. A band is a
// factor: two times in three the true light lies between Low and High. When no cloud
// was noted the value is that of a clear sky with a wide band, and NoCloud says so.
//
// # Not done
//
// Lunar eclipses (NearEclipse flags a moon that may be in shadow), the brighter sky
// on the sun's side in twilight (a high skyline there costs more than is computed),
// lamps of towns under cloud beyond one figure per beat, snow, and light reflected
// from the far bank. Direct sunshine is part of the day's figure, so that by day a skyline
// or a tree that hides the sun is not followed.
package light
