// Package season adds nights up.
package season
