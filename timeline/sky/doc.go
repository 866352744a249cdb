// Package sky says where the sun and the moon stand over a place at an instant,
// and when they cross the lines that anglers and almanacs use.
//
// # Methods
//
// Sun: VSOP87D cut to the terms of Meeus, Astronomical Algorithms, 2nd ed.,
// App. III (the same terms as Reda & Andreas, Solar Energy 76, 2004, table A4.2).
// Moon: all 60 + 60 terms of Meeus ch. 47 (Chapront's ELP-2000/82 cut by Meeus).
// Nutation: the four largest terms of Meeus ch. 22. Parallax: difference of
// vectors on the WGS84 ellipsoid at height 0. A Span fits Chebyshev polynomials
// to the slow geocentric vectors, so that a night costs seven evaluations of the
// series and a minute costs one rotation.
//
// # Units and conventions
//
// Angles are degrees. Altitude is airless and topocentric, counted from the level
// horizon; azimuth runs from true north through east, 0 up to 360. Longitude is
// positive east and may be any finite number: 190 is the same place as -170.
// Instants are UTC and UTC is used as UT1. Distances are kilometres.
//
// # Accuracy
//
// Measured against the JPL ephemeris DE431 on 20,000 points of 2000-2040,
// latitude -55 to 70: sun altitude within 0.0003, moon altitude within 0.0038 (root
// mean square 0.0006), illuminated fraction within 0.00003, moon distance within
// 12 km. Azimuth errs by the same angle divided by cos(altitude). UT1-UTC, up to
// 0.9 s and published only afterwards, is ignored: up to 0.0038 in hour angle.
// Event times follow within max(3 s, 0.006 degrees divided by the rate of climb).
// In nature refraction at the horizon varies by tenths of a degree, so that a
// rising is good to about a minute: nobody should be shown its seconds.
//
// The series hold from 1900 to 2100. The Earth's rotation is known from the
// leap-second list up to the year that list was read (LastLeapTable); later years
// keep its last value, which costs 0.00015 of moon altitude for each second that
// the Earth will by then have gained or lost.
//
// # At the poles
//
// Any latitude from -90 to 90 works. At a pole azimuth is measured from the
// meridian of the longitude given, since north has no meaning there.
//
// # Not done
//
// Height above the ellipsoid (500 m moves the moon by less than 0.0001), dip of a
// sea horizon (a pool has a skyline instead), eclipses, libration, and planets.
// Refraction is for drawing and for skylines only; altitudes never include it.
package sky
