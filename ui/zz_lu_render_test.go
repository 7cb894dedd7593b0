package ui

import (
	"fmt"
	"image/png"
	"os"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func (w *window) luSave(name string) {
	f, _ := os.Create("/tmp/ui-lu/" + name + ".png")
	defer f.Close()
	png.Encode(f, w.picture())
	for _, c := range parts.Cuts(w.shell.Root()) {
		fmt.Println("CUT", name, c)
	}
	for _, p := range w.parts {
		if p.Kind != parts.KindText && (p.W < 60 || p.H < 60) && p.State != "home" {
			fmt.Println("SMALL", name, p)
		}
	}
}

func TestZZRender(t *testing.T) {
	sizes := map[string]fyne.Size{"1280": fyne.NewSize(1280, 800), "1024": fyne.NewSize(1024, 768), "1920": fyne.NewSize(1920, 1200)}
	for name, size := range sizes {
		if s := os.Getenv("LUSIZE"); s != "" && s != name {
			continue
		}
		for _, day := range []bool{false, true} {
			if os.Getenv("LUDAY") == "" && day {
				continue
			}
			tag := name + map[bool]string{true: "d", false: "n"}[day]
			opt := look.Options{Day: day}
			if name == "1920" {
				opt.PerInch = look.PerInch * 1.25
			}
			w := demoAt(t, 0, ScreenLoadUp, size, opt)
			w.luSave("m000-" + tag)
			w = demoAt(t, 125, ScreenLoadUp, size, opt)
			w.luSave("m125-" + tag)
			w.door( "T2@2")
			w.luSave("m125-T2-" + tag)
			w.door( "L1")
			w.luSave("m125-L1-" + tag)
			w.tap(parts.KindAct, "other")
			w.luSave("m125-other-" + tag)
			w.tap(parts.KindAct, "collect")
			w.luSave("m125-collect-" + tag)
			w.tap(parts.KindAct, "other")
			w.tap(parts.KindAct, "carry")
			w.luSave("m125-carry-" + tag)
			w = demoAt(t, 126, ScreenLoadUp, size, opt)
			w.door( "T2@2")
			w.slot("R41-028")
			w.luSave("m126-blocked-" + tag)
			w = demoAt(t, 127, ScreenLoadUp, size, opt)
			if _, ok := w.find(parts.KindDoor, "L1"); ok {
				w.door( "L1")
			}
			w.slot("R41-006")
			w.tap(parts.KindDigit, "2")
			w.tap(parts.KindDigit, "2")
			w.luSave("m128-number-" + tag)
			w.tap(parts.KindDigit, "done")
			w.luSave("m128-refused-" + tag)
			w.slot("R41-021")
			w.luSave("m128-kit-" + tag)
			w.tap(parts.KindAnswer, "count=no")
			w.luSave("m128-count-" + tag)
			w = demoAt(t, 152, ScreenLoadUp, size, opt)
			for _, d := range []string{"R4", "B1", "R1", "box 1"} {
				if _, ok := w.find(parts.KindDoor, d); ok {
					w.door( d)
					w.luSave("m152-" + d + "-" + tag)
				}
			}
			w.door( "R4")
			w.tap(parts.KindAct, "other")
			w.tap(parts.KindAct, "sweep")
			w.luSave("m152-sweep-" + tag)
			w.slot("R41-133")
			w.luSave("m152-empty-" + tag)
			w = demoAt(t, 177, ScreenLoadUp, size, opt)
			w.luSave("m177-" + tag)
		}
	}
}

func (w *window) slot(id string) { w.shell.screens[ScreenLoadUp].(*loadupScreen).act("slot:"+id) }
func (w *window) door(id string) { w.shell.screens[ScreenLoadUp].(*loadupScreen).act("door:"+id) }
