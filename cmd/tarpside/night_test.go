package main

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tarpside/board"
	"tarpside/ui/parts"
)

// onTarp is a piece that lies on the tarp.
func (r *running) onTarp() parts.Part {
	r.t.Helper()
	var piece parts.Part
	r.wait("a piece on the tarp", func() bool {
		all := r.read()
		k := slices.IndexFunc(all, func(p parts.Part) bool { return p.Kind == "piece" && p.State == "tarp" })
		if k >= 0 {
			piece = all[k]
		}
		return k >= 0
	})
	return piece
}

// press are the words for xdotool of a tap on a part.
func press(p parts.Part) []string {
	return []string{"mousemove", fmt.Sprint(p.X + p.W/2), fmt.Sprint(p.Y + p.H/2), "mousedown", "1", "mouseup", "1"}
}

// A battery that is pulled at any moment of a touch takes nothing with it that
// the window had shown.
func TestInARealWindowWhatWasShownIsThereAfterAKillInTheMiddleOfATap(t *testing.T) {
	db := demoFile(t, 60)
	shown := "" // on the foot when the window before was killed
	var old string
	const kills = 8
	for k := range kills + 1 {
		r := start(t, "-db", db)
		proof := r.says("proof")
		if header := r.says("header"); !strings.Contains(header, "Sawpit Bridge Road") || !r.here("tarp") {
			t.Fatalf("the window comes up with the header %q, not on the tarp of the scene", header)
		}
		if shown != "" && shown != old && proof != shown {
			t.Errorf("before the kill the foot said %q, now %q", shown, proof)
		}
		if k == kills {
			break
		}
		piece := r.onTarp()
		xdotool(t, press(piece)...)
		r.wait("the piece to be picked", func() bool { p, _ := r.find("piece", piece.ID); return p.State == "picked" })
		place, _ := r.find("place", "at:V1")
		xdotool(t, press(place)...)
		time.Sleep(time.Duration(k) * 3 * time.Millisecond) // another moment of the touch each time
		if k == kills-1 {                                   // and once the answer is there
			r.wait("the entry", func() bool { return r.says("proof") != proof })
		}
		r.end()
		old, shown = proof, r.says("proof")
		b := openFile(t, db)
		found, err := b.Verify()
		if err != nil || slices.ContainsFunc(found, func(f board.Finding) bool { return !f.OK }) {
			t.Errorf("after kill %d the log is not sound: %v %v", k, found, err)
		}
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	}
}

// here tells which screen is shown.
func (r *running) here(screen string) bool {
	p, _ := r.find("screen", screen)
	return p.State == "here"
}

// What 400 touches may add to the memory of the window after 200, in KiB: what
// they logged, and what the collector leaves lying about.
const mayGrow = 16 << 10

func TestInARealWindowAnHourOfTouchesLeavesTheMemoryFlat(t *testing.T) {
	db := demoFile(t, 60)
	r := start(t, "-db", db)
	before := entriesIn(t, db)
	piece := r.onTarp()
	xdotool(t, press(piece)...)
	r.wait("the piece to be picked", func() bool { p, _ := r.find("piece", piece.ID); return p.State == "picked" })
	place, _ := r.find("place", "at:V1")
	xdotool(t, press(place)...)
	r.wait("the piece to go", func() bool { return !strings.HasPrefix(r.says("last"), "Nothing") && r.says("picked") == "" })
	undo, _ := r.find("act", "undo")
	xdotool(t, press(undo)...)
	r.wait("the piece to be back", func() bool { p, ok := r.find("piece", piece.ID); return ok && p == piece })

	var third [3]float64
	const rounds, touches = 66, 3 // a third of an hour: about 200 touches
	for k := range third {
		for range rounds / 6 {
			var round []string
			for range 6 {
				round = slices.Concat(round, press(piece), press(place), press(undo))
			}
			xdotool(t, round...)
		}
		want := before + 2*((k+1)*rounds+1)
		r.wait("all that was touched to be logged", func() bool { return entriesIn(t, db) == want })
		third[k] = memory(t, r.cmd.Process.Pid)
	}
	t.Logf("%d touches; memory after each third: %.0f, %.0f, %.0f MiB", 3*rounds*touches, third[0]/1024, third[1]/1024, third[2]/1024)
	if third[2] > third[0]+mayGrow {
		t.Errorf("the memory grew from %.0f to %.0f KiB", third[0], third[2])
	}
}

// entriesIn counts the entries of a log.
func entriesIn(t *testing.T, db string) int {
	t.Helper()
	b := openFile(t, db)
	defer b.Close()
	all, err := b.Entries()
	if err != nil {
		t.Fatal(err)
	}
	return len(all)
}

// wakeful is a driver that keeps what it was told about the screen.
type wakeful struct {
	fyne.Driver
	told []bool
}

func (w *wakeful) SetDisableScreenBlanking(off bool) { w.told = append(w.told, off) }

type wakefulApp struct {
	fyne.App
	driver *wakeful
}

func (a wakefulApp) Driver() fyne.Driver { return a.driver }

func TestTheScreenIsToldToStayAwakeWhenTheWindowComesUp(t *testing.T) {
	plain := test.NewTempApp(t)
	driver := &wakeful{Driver: plain.Driver()}
	w := &window{app: wakefulApp{plain, driver}, win: test.NewTempWindow(t, nil)}
	w.started()
	if !slices.Equal(driver.told, []bool{true}) {
		t.Errorf("the screen was told %v, want once that it must not go dark", driver.told)
	}
}
