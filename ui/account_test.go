package ui

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func TestTheLinesBehindEveryFigureAddUpToIt(t *testing.T) {
	for _, minute := range []int{0, 60, 91, 125, 177} {
		w := demoAt(t, minute, ScreenMore, glass1280, look.Options{})
		n := w.shell.now()
		for _, rig := range n.rigs() {
			for term, want := range footCounts(n.s.Account(n.scene.ID, rig)) {
				got := 0
				for _, i := range n.termLines(rig, term) {
					got += footCounts(n.s.AccountOf(n.scene.ID, i))[term]
				}
				if got != want {
					t.Errorf("minute %d, %s %s: %d behind a figure of %d", minute, rig, parts.FootWords[term], got, want)
				}
			}
		}
	}
}

func TestFromAFigureToTheEntriesThatMadeItInThreeTouches(t *testing.T) {
	w := demoAt(t, 60, ScreenMore, glass1280, look.Options{})
	w.tap("act", "account-R41")
	w.tap("act", "term-on-tarp")
	w.tap("piece", "R41-001")
	got := w.texts("entry")
	if len(got) == 0 || !strings.Contains(got[0], "to Tarp") || !strings.Contains(strings.Join(got, "\n"), "tablet A") {
		t.Errorf("the entries are %q", got)
	}
	w.tap("act", "back")
	w.tap("act", "back")
	w.tap("act", "back")
	if p, _ := w.find("act", "account-R41"); p.ID == "" {
		t.Error("three times back is not where it began")
	}
}

func TestAnEntryIsReadInWordsAndARefusedOneSaysWhy(t *testing.T) {
	w := demoAt(t, 177, ScreenMore, glass1280, look.Options{})
	w.shell.open(newEntries(w.shell, "R41-006"))
	got := strings.Join(w.texts("entry"), "\n")
	for _, want := range []string{"Tool battery 2 read: charge left: 22 %", "Refused: Tool battery 2 does not pass: charge left: 22 %"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not among\n%s", want, got)
		}
	}
	if strings.Contains(got, "=") {
		t.Errorf("a reading stands as the file has it:\n%s", got)
	}
}

func TestAListOfRowsStandsBesideItselfBeforeItHidesOne(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		w := demoAt(t, 60, ScreenMore, size, glassLook(size, 1))
		w.tap("act", "new-scene")
		if p, ok := w.find("act", "open-Something else"); !ok || float32(p.Y+p.H) > size.Height-look.U(look.Foot) {
			t.Errorf("%g wide: the last kind of call is not in view whole: %+v", size.Width, p)
		}
		if first, _ := w.find("act", "open-Car extrication"); float32(first.H) < look.U(look.Floor)-1 {
			t.Errorf("%g wide: a row is %d high", size.Width, first.H)
		}
	}
}

// texts are all reading parts with an id, from the top.
func (w *window) texts(id string) (out []string) {
	for _, p := range w.parts {
		if p.Kind == parts.KindText && p.ID == id {
			out = append(out, p.Text)
		}
	}
	return out
}

func TestTheAccountIsWholeAtEverySizeOfGlassAndText(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		for _, scale := range textScales {
			opt := LookFor(size, scale == 1.3)
			opt.Text = scale
			w := demoAt(t, 177, ScreenMore, size, opt)
			n := w.shell.now()
			for _, rig := range n.present() {
				w.shell.over = nil
				w.shell.open(newAccount(w.shell, rig))
				w.listed("account of " + rig)
				for term, count := range footCounts(n.s.Account(n.scene.ID, rig)) {
					if count == 0 {
						continue
					}
					w.shell.over = nil
					w.shell.open(newTermLines(w.shell, rig, term))
					w.listed(fmt.Sprintf("%v at %.1f: %s %s", size, scale, rig, parts.FootWords[term]))
					w.shell.open(newEntries(w.shell, n.d.Items[n.termLines(rig, term)[0]].ID))
					w.listed("entries")
				}
			}
		}
	}
}

// What was read stands in the log as "battery=22": people are told "Charge
// left: 22 %".
func TestNoEntryIsSaidInTheLettersOfATable(t *testing.T) {
	w := demoAt(t, 177, ScreenTarp, glass1280, look.Options{})
	n, read := w.shell.now(), 0
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if text := n.actLine(e); strings.ContainsAny(text, "=_") {
			t.Errorf("%s of %s is said as %q", e.Verb, e.Item, text)
		}
		if e.Verb == model.CheckIt {
			read++
		}
	}
	if read == 0 {
		t.Error("nothing was read in the demo")
	}
}
