package main

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
)

// place finds the folder for what the program keeps of one kind: "data" for the
// journals, "state" for the log. It follows the XDG base directory specification
// 0.8 where that is the custom, else the system's own habit, and makes the folder.
func place(kind string, env func(string) string) (string, error) {
	base, err := base(kind, env)
	if err != nil {
		return "", err
	}
	dir := filepath.Join(base, "gloamline")
	return dir, os.MkdirAll(dir, 0o700)
}

// errNoHome says that nothing tells where a person's files live.
var errNoHome = errors.New("neither HOME nor XDG_DATA_HOME says where your files live")

func base(kind string, env func(string) string) (string, error) {
	name, below := "XDG_DATA_HOME", filepath.Join(".local", "share")
	if kind == "state" {
		name, below = "XDG_STATE_HOME", filepath.Join(".local", "state")
	}
	if dir := env(name); filepath.IsAbs(dir) { // a relative one is to be ignored
		return dir, nil
	}
	switch runtime.GOOS {
	case "windows":
		if dir := env("LOCALAPPDATA"); dir != "" {
			return dir, nil
		}
	case "darwin":
		below = filepath.Join("Library", "Application Support")
	}
	home := env("HOME")
	if home == "" {
		return "", errNoHome
	}
	return filepath.Join(home, below), nil
}
