//go:build unix && !darwin

package main

import (
	"fmt"
	"net"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// sockets is where X servers of this machine listen.
const sockets = "/tmp/.X11-unix"

// display reports in a sentence why no window can open, nil if one can. It must be
// asked before the toolkit starts, which panics without a display.
func display(env func(string) string, sockets string) error {
	if wayland && env("WAYLAND_DISPLAY") != "" {
		return nil
	}
	d := env("DISPLAY")
	if d == "" {
		if env("WAYLAND_DISPLAY") != "" {
			return fmt.Errorf("this Wayland session has no X display (DISPLAY is not set), which this build of the window needs")
		}
		return fmt.Errorf("there is no display here (DISPLAY is not set), so no window can open")
	}
	host, screen, ok := cutLast(d, ":")
	number, err := strconv.Atoi(strings.SplitN(screen, ".", 2)[0])
	if !ok || err != nil || number < 0 {
		return fmt.Errorf("DISPLAY is %q, which names no display", d)
	}
	var c net.Conn
	if host == "" || host == "unix" {
		name := filepath.Join(sockets, "X"+strconv.Itoa(number))
		if c, err = net.DialTimeout("unix", name, 2*time.Second); err != nil {
			c, err = net.DialTimeout("unix", "@"+name, 2*time.Second) // Linux's unnamed kind
		}
	} else {
		c, err = net.DialTimeout("tcp", net.JoinHostPort(host, strconv.Itoa(6000+number)), 4*time.Second)
	}
	if err != nil {
		return fmt.Errorf("DISPLAY is %q, but no X server answers there", d)
	}
	return c.Close()
}

// cutLast cuts s at the last sep.
func cutLast(s, sep string) (before, after string, found bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}
