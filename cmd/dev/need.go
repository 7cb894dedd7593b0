package main

import (
	"fmt"
	"slices"
	"strings"
)

// need is a Debian or Ubuntu package and what it is for, in words that follow
// "for".
type need struct{ pkg, why string }

// windowNeeds is what building the window takes. Fyne draws with OpenGL
// through C, and finds those libraries with pkg-config.
// Checked: Fyne 2.8.1 on Debian 12.
var windowNeeds = []need{
	{"gcc", "compiling the C parts of the window"},
	{"libc6-dev", "the headers every C program needs"},
	{"pkg-config", "finding the C libraries below"},
	{"xorg-dev", "a window under X11"},
	{"libwayland-dev", "a window under Wayland"},
	{"libxkbcommon-dev", "the keyboard under Wayland"},
	{"libgl1-mesa-dev", "drawing with OpenGL"},
}

// testNeeds is what the tests take on top of windowNeeds (gcc is also what the
// race detector links with).
var testNeeds = []need{
	{"xvfb", "a display with no screen, for the window tests"},
	{"xdotool", "taps and keys in the window tests"},
	{"sqlite3", "reading a department file with a program that is not ours"},
	{"hledger", "adding up the journal with a program that is not ours"},
	{"ledger", "adding it up with another one"},
	{"poppler-utils", "reading printed papers, and drawing their pages, with programs that are not ours"},
	{"libreoffice-calc-nogui", "opening the workbooks we write in a spreadsheet that is not ours, and writing some for us to read"},
	{"libgl1", "OpenGL on that display"},
	{"libgl1-mesa-dri", "OpenGL without a graphics card"},
}

// installed reads what dpkg-query prints with dpkgFormat and returns the names
// of the packages that are fully installed. A package that was removed but
// left its settings behind, or is half installed, is not.
func installed(out string) map[string]bool {
	have := map[string]bool{}
	for row := range strings.Lines(out) {
		f := strings.Fields(row)
		// Want, error, status: "install ok installed", "hold ok installed",
		// "deinstall ok config-files".
		if len(f) == 4 && f[2] == "ok" && f[3] == "installed" {
			have[f[0]] = true
		}
	}
	return have
}

// dpkgFormat makes dpkg-query print one line a package for installed to read.
const dpkgFormat = `${Package} ${Status}\n`

// missing returns the needs that are not met, in the order they were given.
func missing(needs []need, have map[string]bool) []need {
	var left []need
	for _, n := range needs {
		if !have[n.pkg] {
			left = append(left, n)
		}
	}
	return left
}

// packages returns the package names of needs.
func packages(needs []need) []string {
	var names []string
	for _, n := range needs {
		names = append(names, n.pkg)
	}
	return names
}

// reasons lists needs for a person, one a line.
func reasons(needs []need) string {
	var b strings.Builder
	for _, n := range needs {
		fmt.Fprintf(&b, "  %-18s for %s\n", n.pkg, n.why)
	}
	return b.String()
}

// aptPlan is the apt-get command lines that install pkgs, in order: root runs
// them as they are, anyone else through sudo. It asks no questions, and waits
// up to five minutes for another installer to finish. Recommended extras are
// left out: a few hundred MB that nothing here uses.
func aptPlan(pkgs []string, root bool) [][]string {
	front := []string{"env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-q", "-y", "-o", "DPkg::Lock::Timeout=300"}
	if !root {
		front = append([]string{"sudo"}, front...)
	}
	return [][]string{
		append(slices.Clone(front), "update"),
		append(append(slices.Clone(front), "install", "--no-install-recommends"), pkgs...),
	}
}

// byHand is the one command that a person can run instead, as root or with sudo.
func byHand(pkgs []string, sudo bool) string {
	with := ""
	if sudo {
		with = "sudo "
	}
	return fmt.Sprintf("%[1]sapt-get update && %[1]sapt-get install -y --no-install-recommends %[2]s", with, strings.Join(pkgs, " "))
}
