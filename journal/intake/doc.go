// Package intake turns files that outlast a night (a watch's track, photos, a river
// gauge's readings) into proposed entries of that night.
package intake
