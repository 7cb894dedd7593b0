package ui

import (
	"slices"
	"testing"

	"tarpside/model"
)

// TestTheStoryOfMinutes125To135ByTouchesAlone loads as the demo scene does,
// the crate too early and the batteries too low included, and ends with every
// piece of the rig where the scene has it.
func TestTheStoryOfMinutes125To135ByTouchesAlone(t *testing.T) {
	r := atRig(t, 125)
	r.touch("door T2@2", "slot R41-034", "act stow") // too early
	r.touch("slot R41-028", "act unstow", "act stow")
	r.touch("act stow") // strut 2 comes up by itself
	r.want("R41-029", "home", 1)
	r.touch("act stow") // and then the crate
	r.want("R41-034", "home", 1)

	r.touch("door L1", "slot R41-006", "digit 2", "digit 2", "act charge")
	r.touch("slot R41-009", "digit 5", "digit 8", "act charge")
	r.touch("slot R41-001", "act stow")
	r.touch("slot R41-005", "digit 8", "digit 4", "digit done")
	r.touch("slot R41-002", "act stow")

	r.touch("act other", "act collect", "act return-BANK")
	r.touch("door L4", "slot R41-061", "digit 4", "digit 0", "digit done", "act stow")
	r.says("refused", "Tank level: 40")
	r.touch("act again", "digit 9", "digit 5", "digit done", "act stow")
	r.touch("slot R41-062", "answer dry=no", "act stow", "act override", "member M02")
	r.touch("slot R41-063", "act unused")
	r.touch("slot R41-064", "act stow", "slot R41-067", "act stow")
	r.touch("slot R41-069", "digit 4", "digit done", "act stow")
	r.touch("slot R41-070", "digit 3", "digit done", "act stow")

	r.touch("door B1", "slot R41-085", "act unused", "slot R41-077", "act unused")
	r.touch("door R3", "slot R41-144", "act stow", "slot R41-146", "digit 3", "digit done")
	r.touch("slot R41-150", "answer count=no", "digit 1", "digit 2", "digit done", "digit 5", "digit done", "act stow")

	scene := demoAt(t, 135, ScreenLoadUp, r.shell.Root().Size(), LookFor(r.shell.Root().Size(), false))
	if got, want := whereOf(r.window, "R41"), whereOf(scene, "R41"); !slices.Equal(got, want) {
		t.Errorf("by touches\n%v\nby the scene\n%v", got, want)
	}
	got, want := r.board.Picture().State, scene.board.Picture().State
	for i := range got.Dept.Items {
		if a, b := got.ReadyNow(i), want.ReadyNow(i); a != b && got.Dept.Items[i].Rig == "R41" {
			t.Errorf("%s: %d ready, the scene has %d", got.Dept.Items[i].ID, a, b)
		}
	}
	if r.taps > 90 {
		t.Errorf("19 pieces took %d touches", r.taps)
	}
}

// whereOf is where the pieces of a rig are that are not home.
func whereOf(w *window, rig string) (out []model.WhereRow) {
	s := w.board.Picture().State
	for _, row := range s.Where() {
		if s.Dept.Items[row.Line].Rig == rig {
			row.Holder = ""
			out = append(out, row)
		}
	}
	return out
}
