// Package gauge reads what a river gauge recorded, and says how the river stood: bytes
// to levels in metres at UTC instants, with a warning for all that was assumed.
//
// Layouts, told by content alone: the English flood and hydrology services (CSV, JSON),
// the Scottish service (CSV, JSON, an older download), the Irish month and archive files
// and exports, US tab-separated files, Norwegian JSON, Canadian CSV, and any plain table
// with columns for when and how high (see Column and Choice). Levels and, where a file
// has it, flow are read, and the temperature of the water where a file of the US service, the Norwegian one or
// with # lines says that it is that; rain, temperature of the air and the rest are passed over with a warning.
//
// A value keeps the precision of the file; feet and centimetres are converted by the
// exact factors (1 ft = 0.3048 m) and the unit of the file is kept by name. A time with
// an offset is exact. One without is read in the zone the layout is known for, else in
// the zone the caller gives, else in UTC; a warning says which. Levels of two gauges, or
// over two datums, cannot be compared, and nothing here does so.
//
// Curve answers what the river did at a moment: level, slope, hours since the peak,
// share of the rise left, class. The thresholds are common practice, not a standard; each
// can be set for a gauge. All of it is the river at the gauge, never at a pool.
//
// Reading streams: memory grows with the readings kept, not with the file. Not done:
// WaterML, spreadsheets' own files, archives, columns divided by blanks, quoted cells
// with line breaks, and any forecast.
package gauge
