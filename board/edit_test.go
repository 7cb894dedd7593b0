package board_test

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"tarpside/board"
	"tarpside/board/stores"
	"tarpside/model"
)

// patchOf changes one line of the inventory.
func patchOf(b *tablet, item string, edit func(*model.Item)) model.InventoryPatch {
	it := *b.Picture().State.Wanted().Item(item)
	edit(&it)
	return model.InventoryPatch{Put: &model.Department{Items: []model.Item{it}}}
}

func TestAnEditOfTheInventoryIsOneEntryAndChangesNothingElse(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	before := b.Picture().State.Wanted()
	e, err := b.EditStores(patchOf(b, "R41-055", func(it *model.Item) { it.ShortName = "Stair step chock" }), "M01")
	if err != nil || e.Verb != model.Stores || e.By != "M01" || !e.Taken() {
		t.Fatalf("logged %v %q by %s: %v", e.Verb, e.Reply.Word, e.By, err)
	}
	_, changes := stores.Diff(before, b.Picture().State.Wanted())
	if len(changes) != 1 || changes[0].Key != "R41-055" || len(changes[0].Columns) != 1 {
		t.Errorf("it changed %v", changes)
	}
}

func TestAnEditThatTheTablesWouldNotTakeChangesNothingAndNamesEveryProblem(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	entries := len(b.Picture().Entries)
	_, err := b.EditStores(patchOf(b, "R41-055", func(it *model.Item) {
		it.ShortName, it.LeastUsable, it.Slot = "A name far too long for a tile", it.Quantity+1, "E42-L1"
	}), "M01")
	var problems stores.Problems
	if !errors.As(err, &problems) {
		t.Fatalf("got %v", err)
	}
	for _, column := range []string{"short_name", "least_usable", "slot"} {
		if !slices.ContainsFunc(problems, func(p stores.Problem) bool { return p.Column == column }) {
			t.Errorf("%s is not named in: %s", column, strings.ReplaceAll(err.Error(), "\n", " / "))
		}
	}
	if len(b.Picture().Entries) != entries || b.Picture().State.Wanted().Item("R41-055").Slot == "E42-L1" {
		t.Error("something was changed all the same")
	}
}

func TestAQuantityEditedWhileThePieceIsOutWaitsUntilItIsHome(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	if _, err := b.OpenScene("M01", "Drill", nil, b.clock.Now()); err != nil {
		t.Fatal(err)
	}
	act := func(verb model.Verb, from, to string) {
		t.Helper()
		entries, err := b.Log(board.Tap{Acts: []model.Act{{Verb: verb, By: "M01", Item: "R41-055", Quantity: 2, From: from, To: to, Reading: "clean=yes; edge=yes"}}})
		if err != nil || !entries[0].Taken() {
			t.Fatalf("%s: %v %v", verb, entries[0].Reply, err)
		}
	}
	act(model.PullOff, "home", "tarp")
	was := b.Picture().State.Dept.Item("R41-055").Quantity
	if _, err := b.EditStores(patchOf(b, "R41-055", func(it *model.Item) { it.Quantity = was + 2 }), "M01"); err != nil {
		t.Fatal(err)
	}
	s := b.Picture().State
	if s.Dept.Item("R41-055").Quantity != was || !slices.Contains(s.Held(), "R41-055") {
		t.Fatalf("%d counted, held %v", s.Dept.Item("R41-055").Quantity, s.Held())
	}
	act(model.Stow, "tarp", "home")
	s = b.Picture().State
	if s.Dept.Item("R41-055").Quantity != was+2 || len(s.Held()) > 0 {
		t.Errorf("home again: %d counted, held %v", s.Dept.Item("R41-055").Quantity, s.Held())
	}
}

func TestTheInventoryGoesIntoANewFileByFolderAndByWorkbook(t *testing.T) {
	old := newTablet(t, "A").withDemo(t)
	for _, name := range []string{"tables", "tables.xlsx"} {
		path := filepath.Join(t.TempDir(), name)
		for range 2 { // the second time over the first
			if err := old.SaveStores(path); err != nil {
				t.Fatal(err)
			}
		}
		fresh := newTablet(t, "B")
		dry, err := fresh.LoadStoresFrom(path, "M01", true)
		if err != nil || len(dry) < 300 || len(fresh.Picture().State.Dept.Items) != 0 {
			t.Fatalf("%s: %d changes in a trial, %v", name, len(dry), err)
		}
		if _, err := fresh.LoadStoresFrom(path, "M01", false); err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(fresh.Picture().State.Dept, old.Picture().State.Dept) {
			t.Errorf("%s: another inventory", name)
		}
		if fresh.blob(t) == "" || fresh.Picture().State.Folded() != 1 {
			t.Errorf("%s: %d entries", name, fresh.Picture().State.Folded())
		}
		left, err := filepath.Glob(filepath.Join(filepath.Dir(path), ".*"))
		if err != nil || len(left) > 0 {
			t.Errorf("%s: left behind: %v", name, left)
		}
	}
}

func TestAWorkbookThatCannotBeWrittenSaysWhatIsSafeAndWhatToDo(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	inTheWay := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(inTheWay, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	err := b.SaveStores(filepath.Join(inTheWay, "tables.xlsx"))
	if err == nil || !strings.Contains(err.Error(), "tables.xlsx could not be written. The department file is as it was; choose") {
		t.Errorf("it says %v", err)
	}
}
