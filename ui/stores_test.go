package ui

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tarpside/assets"
	"tarpside/board"
	"tarpside/ui/look"
	"tarpside/ui/parts"
)

func TestEveryPieceIsFoundInThreeTouches(t *testing.T) {
	w := demoAt(t, 60, ScreenStores, glass1920, LookFor(glass1920, false))
	n := w.shell.now()
	reached := map[string]bool{}
	for _, r := range n.rigs() {
		for _, c := range n.compartments(r) {
			l := newSlots(w.shell, r, c).(*lineList)
			for _, i := range l.lines(n) {
				if reached[n.d.Items[i].ID] {
					t.Errorf("%s is listed twice", n.d.Items[i].ID)
				}
				reached[n.d.Items[i].ID] = true
			}
		}
	}
	if len(reached) != len(n.d.Items) {
		t.Errorf("%d of %d lines are behind a door", len(reached), len(n.d.Items))
	}
	w.tap("rig", "R41")
	w.tap("door", "store-L3")
	p, ok := w.find("piece", "R41-055")
	if !ok || !strings.HasPrefix(p.Text, "4 Step chock") || !strings.Contains(p.Text, "11 lb") || !strings.Contains(p.Text, "asks clean") ||
		!strings.Contains(p.Text, "marked R41 STEP CHOCK") || !strings.Contains(p.Text, "at V2") {
		t.Fatalf("the step chocks are %q", p.Text)
	}
	w.tap("piece", "R41-055")
	if got := w.text("facts"); !strings.Contains(got, "Lives: R41, L3, block bins over wheel") {
		t.Errorf("the page says %q", got)
	}
}

func TestThreeLettersFindAPieceInTheInventory(t *testing.T) {
	w := demoAt(t, 60, ScreenStores, glass1280, look.Options{})
	w.tap("act", "find")
	for _, letter := range []string{"s", "t", "a", "i"} {
		w.tap("act", letter)
	}
	w.tap("piece", "R41-055") // "stair chock" is its other name
	if got := w.text("facts"); !strings.Contains(got, "Also called: stair chock") {
		t.Errorf("the page says %q", got)
	}
}

// page opens the page of the step chocks, 4 of them at V2 at minute 60.
func page(t *testing.T, minute int) *window {
	w := demoAt(t, minute, ScreenStores, glass1280, look.Options{})
	w.shell.open(newLinePage(w.shell, "R41-055"))
	return w
}

func TestChangesWaitOnThePageAndAreKeptAsOneEntry(t *testing.T) {
	w := page(t, -1)
	before := len(w.board.Picture().Entries)
	w.tap("act", "short")
	for range len("Step chock") {
		w.tap("act", "delete")
	}
	for _, letter := range []string{"R", "a", "m", "p"} {
		w.tap("act", strings.ToLower(letter))
	}
	w.tap("act", "done")
	w.tap("act", "least")
	w.types("3")
	w.tap("act", "quantity")
	w.types("6")
	w.tap("act", "two")
	w.tap("act", "slot")
	w.tap("act", "slot-R41-L4-F")
	if it := w.board.Picture().State.Wanted().Item("R41-055"); it.Quantity != 4 || len(w.board.Picture().Entries) != before {
		t.Fatal("something was kept before it was said")
	}
	w.tap("act", "keep")
	it := w.board.Picture().State.Dept.Item("R41-055")
	if it.LeastUsable != 3 || it.Quantity != 6 || !it.TwoPerson || it.Slot != "R41-L4-F" || !strings.EqualFold(it.ShortName, "ramp") {
		t.Errorf("kept as %+v", it)
	}
	if got := len(w.board.Picture().Entries); got != before+1 {
		t.Errorf("%d entries", got-before)
	}
}

func TestAChangeThatCannotBeIsNotKeptAndEveryProblemIsSaid(t *testing.T) {
	w := page(t, 60)
	before := len(w.board.Picture().Entries)
	w.tap("act", "least")
	w.types("9")
	w.tap("act", "keep")
	if got := w.text("facts"); !strings.Contains(got, "9 is more than the 4 there are") || !strings.Contains(got, "Nothing was changed") {
		t.Errorf("the page says %q", got)
	}
	if len(w.board.Picture().Entries) != before {
		t.Error("it was logged")
	}
	w.sound("a change that cannot be")
}

func TestAQuantityChangedWhilePiecesAreOutSaysThatItWaits(t *testing.T) {
	w := page(t, 60)
	w.tap("act", "quantity")
	w.types("6")
	w.tap("act", "keep")
	if got := w.text("facts"); !strings.Contains(got, "Waits: 4 now, 6 once all are home") {
		t.Errorf("the page says %q", got)
	}
	w.tap("screen", ScreenMore)
	w.tap("act", ScreenStores)
	if got := w.text("held"); !strings.Contains(got, "4 now, 6 once all are home") {
		t.Errorf("Stores says %q", got)
	}
}

func TestStoresIsWholeAtEverySizeOfGlassAndText(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		for _, scale := range textScales {
			opt := LookFor(size, scale == 1.3)
			opt.Text = scale
			w := demoAt(t, 60, ScreenStores, size, opt)
			w.sound("stores")
			n := w.shell.now()
			for _, r := range n.rigs() {
				w.shell.Go(ScreenStores)
				w.tap("rig", r)
				w.listed("doors of " + r)
				for _, c := range n.compartments(r) {
					w.shell.Go(ScreenStores)
					l := newSlots(w.shell, r, c).(*lineList)
					w.shell.open(l)
					for range 30 {
						w.listed(fmt.Sprintf("%v at %.1f: %s %s", size, scale, r, c))
						was := l.grid.Offset()
						if l.grid.PageBy(1); l.grid.Offset() == was {
							break
						}
					}
				}
			}
			w.shell.Go(ScreenStores)
			w.tap("act", "find")
			w.sound("find")
			w.tap("act", "b")
			for _, cut := range parts.Cuts(w.shell.Root()) {
				t.Errorf("found: cut: %s", cut)
			}
			for _, id := range []string{"R41-001", "R41-112", "R41-055"} {
				w.shell.over = nil
				w.shell.open(newLinePage(w.shell, id))
				w.listed("page of " + id)
				for _, what := range []string{"name", "short", "quantity", "slot"} {
					w.tap("act", what)
					w.listed(what + " of " + id)
					w.tap("act", "back")
				}
			}
		}
	}
}

// onDisk is what the program gives the window to load tables from.
func onDisk(w *window, root string) Options {
	opts := Options{Screen: ScreenTarp, Demo: func() error { return nil }}
	opts.Folders = func(dir string) (Folder, error) {
		if dir == "" {
			dir = root
		}
		if board.IsWorkbook(dir) {
			return Folder{Path: dir, Up: filepath.Dir(dir), Workbook: true}, nil
		}
		list, err := os.ReadDir(dir)
		f := Folder{Path: dir}
		if dir != root {
			f.Up = filepath.Dir(dir)
		}
		for _, e := range list {
			if e.IsDir() || board.IsWorkbook(e.Name()) {
				f.Inside = append(f.Inside, filepath.Join(dir, e.Name()))
			} else {
				f.Tables++
			}
		}
		return f, err
	}
	opts.LoadFrom = func(dir, by string, dry bool) (out []string, err error) {
		changes, err := w.board.LoadStoresFrom(dir, by, dry)
		for _, c := range changes {
			out = append(out, c.String())
		}
		return out, err
	}
	return opts
}

// emptyWindow is the window over a file with no department, beside a folder
// with the demo's tables.
func emptyWindow(t *testing.T, size fyne.Size, opt look.Options) (w *window, tables string) {
	w = demoAt(t, -1, ScreenTarp, size, opt)
	b, err := board.Open(filepath.Join(t.TempDir(), "empty.db"), board.Options{Now: w.shell.opts.Now, Random: strings.NewReader(strings.Repeat("quillan-county-", 1<<12)), Device: "B"})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	w.board = b
	root := t.TempDir()
	tables = filepath.Join(root, "department")
	demo, err := fs.Sub(assets.Demo, "demo")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(tables, demo); err != nil {
		t.Fatal(err)
	}
	opts := onDisk(w, root)
	opts.Look = opt
	w.reopened(size, opts)
	return w, tables
}

func TestADepartmentIsLoadedByTouchAfterItWasShown(t *testing.T) {
	w, _ := emptyWindow(t, glass1280, look.Options{})
	w.sound("first start")
	if _, ok := w.find("act", "demo"); !ok {
		t.Error("the demo is not offered")
	}
	w.tap("act", "load-department")
	w.tap("act", "folder-department")
	w.tap("act", "look-through")
	if got := w.text("found"); !strings.Contains(got, "Nothing is loaded yet") || !strings.Contains(got, "rigs: R41, Rescue 41") {
		t.Errorf("it says %.200q", got)
	}
	if len(w.board.Picture().State.Dept.Items) != 0 {
		t.Fatal("looking through loaded it")
	}
	w.sound("looked through")
	w.tap("act", "load-yes")
	if got := len(w.board.Picture().State.Dept.Items); got == 0 {
		t.Fatal("nothing was loaded")
	}
	if _, ok := w.find("rig", "R41"); !ok {
		t.Error("the rigs are not shown after")
	}
	w.tap("screen", ScreenTarp)
	if got := w.text("reply"); !strings.HasPrefix(got, "No scene is open") {
		t.Errorf("the tarp says %q", got)
	}
}

func TestAWorkbookIsLoadedByTouchAfterItWasShown(t *testing.T) {
	w, tables := emptyWindow(t, glass1280, look.Options{})
	demo := demoAt(t, -1, ScreenTarp, glass1280, look.Options{})
	if err := demo.board.SaveStores(filepath.Join(filepath.Dir(tables), "department.xlsx")); err != nil {
		t.Fatal(err)
	}
	w.tap("act", "load-department")
	w.tap("act", "folder-department.xlsx")
	w.sound("a workbook")
	w.tap("act", "look-through")
	if got := w.text("found"); !strings.Contains(got, "Nothing is loaded yet") || !strings.Contains(got, "rigs: R41, Rescue 41") {
		t.Errorf("it says %.200q", got)
	}
	if len(w.board.Picture().State.Dept.Items) != 0 {
		t.Fatal("looking through loaded it")
	}
	w.tap("act", "load-yes")
	if got, want := len(w.board.Picture().State.Dept.Items), len(demo.board.Picture().State.Dept.Items); got != want {
		t.Errorf("%d lines were loaded of %d", got, want)
	}
}

func TestABadTableIsNotLoadedAndEveryBadRowIsNamed(t *testing.T) {
	for _, size := range []fyne.Size{glass1024, glass1280, glass1920} {
		for _, scale := range textScales {
			opt := LookFor(size, false)
			opt.Text = scale
			w, tables := emptyWindow(t, size, opt)
			w.sound("first start")
			file := filepath.Join(tables, "items.csv")
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			lines := strings.Split(string(data), "\n")
			for _, i := range []int{3, 9, 40} {
				lines[i] = strings.Replace(lines[i], ",R41,", ",R99,", 1)
			}
			if err := os.WriteFile(file, []byte(strings.Join(lines, "\n")), 0o644); err != nil {
				t.Fatal(err)
			}
			w.tap("act", "load-department")
			w.tap("act", "folder-department")
			w.sound("a folder")
			w.tap("act", "look-through")
			got := w.text("found")
			for _, row := range []string{"row 4,", "row 10,", "row 41,"} {
				if !strings.Contains(got, row) {
					t.Errorf("%s is not named", row)
				}
			}
			if !strings.Contains(got, "Nothing was changed") {
				t.Errorf("it says %.100q", got)
			}
			w.sound("bad rows")
			w.tap("act", "load-yes")
			if len(w.board.Picture().State.Dept.Items) != 0 {
				t.Fatal("bad tables were loaded")
			}
		}
	}
}

func TestWithoutADepartmentNoScreenSaysThatAllIsWell(t *testing.T) {
	w, _ := emptyWindow(t, glass1280, look.Options{})
	for _, name := range []string{ScreenGlance, ScreenLoadUp, ScreenLeaving, ScreenLookFor, ScreenTarp} {
		w.tap("screen", name)
		if _, ok := w.find("act", "load-department"); !ok {
			t.Errorf("%s does not offer to load a department", name)
		}
		if _, ok := w.find("act", "sign"); ok {
			t.Errorf("%s asks for a signature for a rig that is not listed", name)
		}
	}
}
