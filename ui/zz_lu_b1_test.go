package ui
import ("testing";"fyne.io/fyne/v2";"tarpside/ui/look")
func TestZB1(t *testing.T) {
	w := demoAt(t, 125, ScreenLoadUp, fyne.NewSize(1280, 800), look.Options{})
	w.door("B1"); w.luSave("b1")
	w.slot("R41-077"); w.luSave("b1-crate")
	w.door("L1"); w.slot("R41-001"); w.luSave("l1-spreader")
	w.slot("R41-021"); w.shell.screens[ScreenLoadUp].(*loadupScreen).act("stow"); w.luSave("l1-after")
	w.door("L4"); w.luSave("l4")
	w.door("roof box 2"); w.luSave("box2")
	w = demoAt(t, 131, ScreenLoadUp, fyne.NewSize(1280, 800), look.Options{})
	w.door("L4"); w.slot("R41-061"); w.luSave("l4-gen")
	w.door("cab front"); w.luSave("cabfront")
	w = demoAt(t, 161, ScreenLoadUp, fyne.NewSize(1280, 800), look.Options{})
	w.door("L3"); w.luSave("l3done")
}
