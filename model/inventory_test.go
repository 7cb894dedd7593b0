package model_test

import (
	"strings"
	"testing"

	"tarpside/model"
	"tarpside/model/modeltest"
)

// changed logs a change of one line of the yard.
func changed(l *modeltest.Log, id string, change func(*model.Item)) {
	it := *l.State.Wanted().Item(id)
	change(&it)
	l.Do(model.Entry{Act: model.Act{Verb: model.Stores}, Stores: &model.InventoryPatch{Put: &model.Department{Items: []model.Item{it}}}})
}

func removed(l *modeltest.Log, ids ...string) {
	l.Do(model.Entry{Act: model.Act{Verb: model.Stores}, Stores: &model.InventoryPatch{Remove: map[string][]string{model.TableItems: ids}}})
}

// runs runs a script that must go well, and holds the board to its laws and
// to the fold of its entries.
func runs(t *testing.T, l *modeltest.Log, script string) {
	t.Helper()
	if bad := modeltest.Script(l, script); bad != "" {
		t.Fatal(bad)
	}
	if err := modeltest.Check(l.State); err != nil {
		t.Fatal(err)
	}
	if got, want := modeltest.Picture(model.Fold(l.Entries)), modeltest.Picture(l.State); got != want {
		t.Fatalf("folded\n%s\nlive\n%s", got, want)
	}
}

func yard() *modeltest.Log {
	l := modeltest.New("A", modeltest.Yard())
	l.Open("S", "")
	return l
}

func held(l *modeltest.Log) string { return strings.Join(l.State.Held(), " ") }

func TestAChangeOfNumberWaitsUntilThePiecesAreHome(t *testing.T) {
	l := yard()
	runs(t, l, "pull CONE 2 home>tarp -> ok")
	changed(l, "CONE", func(it *model.Item) { it.Quantity, it.Name = 8, "Road cone" })
	runs(t, l, ": CONE home=4 tarp=2")
	if it := l.State.Dept.Item("CONE"); it.Name != "Road cone" || it.Quantity != 6 || held(l) != "CONE" {
		t.Errorf("%+v, held %s", it, held(l))
	}
	runs(t, l, `stow CONE 1 tarp>home -> ok
		: CONE home=5
		stow CONE 1 tarp>home -> ok
		: CONE home=8`)
	if held(l) != "" {
		t.Errorf("held %s", held(l))
	}
}

func TestALineThatIsTakenOffTheBooksStaysUntilItIsHome(t *testing.T) {
	l := yard()
	runs(t, l, `pull BOX home>tarp -> ok two_person
		take_out SAW 1 kit:BOX>at:V1 -> ok`)
	removed(l, "BOX", "SAW", "PUNCH", "MASK", "BAG", "O2")
	if held(l) != "BAG BOX MASK O2 PUNCH SAW" {
		t.Errorf("held %s", held(l))
	}
	runs(t, l, `stow SAW at:V1>home -> ok
		stow BOX tarp>home read=count=yes -> ok two_person`)
	if held(l) != "" || l.State.Dept.Item("BOX") != nil || l.State.Dept.Item("O2") != nil {
		t.Errorf("held %s", held(l))
	}
	runs(t, l, "pull BOX home>tarp -> warned unknown_item")
}

func TestAPieceThatWaitsKeepsTheKitItLivesIn(t *testing.T) {
	l := yard()
	runs(t, l, "take_out PUNCH home>at:V1 -> ok")
	for _, id := range []string{"PUNCH", "SAW", "MASK", "BAG"} {
		changed(l, id, func(it *model.Item) { it.Kit = "" })
	}
	removed(l, "BOX")
	if held(l) != "BOX PUNCH" {
		t.Errorf("held %s", held(l))
	}
	runs(t, l, `: SAW home=2
		: PUNCH kit:BOX=0 at:V1=1
		stow PUNCH at:V1>home read=clean=yes -> ok
		: PUNCH home=1`)
	if l.State.Dept.Item("BOX") != nil || held(l) != "" {
		t.Errorf("held %s", held(l))
	}
	l = yard()
	runs(t, l, "take_out PUNCH home>at:V1 -> ok")
	changed(l, "PUNCH", func(it *model.Item) { it.Kit = "" })
	changed(l, "SAW", func(it *model.Item) { it.Kit = "" })
	changed(l, "MASK", func(it *model.Item) { it.Kit = "" })
	changed(l, "BAG", func(it *model.Item) { it.Kit = "" })
	changed(l, "BOX", func(it *model.Item) { it.Kind = model.Piece })
	runs(t, l, "stow PUNCH at:V1>kit:BOX read=clean=yes -> ok")
	if l.State.Dept.Item("BOX").Kind != model.Piece {
		t.Error("the box is still a kit")
	}
}

func TestTwoKitsAreNeverInEachOther(t *testing.T) {
	l := yard()
	b := l.Fork("B")
	changed(l, "BOX", func(it *model.Item) { it.Kit = "BAG" }) // a bad table
	runs(t, l, "pull BOX home>tarp -> ok two_person")
	// Two tablets apart: each of the changes is good by itself.
	a := b.Fork("A2")
	changed(a, "BAG", func(it *model.Item) { it.Kit = "" })
	b.Hear(a)
	c := b.Fork("C")
	bag2 := model.Item{ID: "BAG2", Rig: "R1", Slot: "A", Kind: model.Kit, Quantity: 1, LeastUsable: model.Blank}
	for _, x := range []*modeltest.Log{b, c} {
		x.Do(model.Entry{Act: model.Act{Verb: model.Stores}, Stores: &model.InventoryPatch{Put: &model.Department{Items: []model.Item{bag2}}}})
	}
	changed(b, "BAG", func(it *model.Item) { it.Kit = "BAG2" })
	changed(c, "BAG2", func(it *model.Item) { it.Kit = "BAG" })
	b.Hear(c)
	runs(t, b, `pull BAG home>tarp -> ok
		count BAG2 1 -> ok`)
	// A swap of which holds which, while the outer one is away.
	d := yard()
	runs(t, d, "take_out BAG home>tarp -> ok")
	p := &model.InventoryPatch{Put: &model.Department{}}
	for id, kit := range map[string]string{"BOX": "BAG", "BAG": ""} {
		it := *d.State.Wanted().Item(id)
		it.Kit = kit
		p.Put.Items = append(p.Put.Items, it)
	}
	d.Do(model.Entry{Act: model.Act{Verb: model.Stores}, Stores: p})
	runs(t, d, `: BOX home=1
		hand BAG tarp>at:V1 -> ok
		: O2 kit:BAG=1 past=yes
		stow BAG at:V1>home read=as_is -> warned unread_inside
		: BOX kit:BAG=1
		: BAG home=1`)
}

func TestALineThatIsPutIntoAKitThatIsOutCountsAsOut(t *testing.T) {
	l := yard()
	runs(t, l, "direct BOX home>at:V1 -> ok straight_off two_person")
	changed(l, "CONE", func(it *model.Item) { it.Kit = "BOX" })
	runs(t, l, ": CONE kit:BOX=6")
	if a := l.State.Account("S", "R1"); a.Home != 0 || a.CameOff != 17 || a.Out != 17 {
		t.Errorf("%+v", a)
	}
}

func TestAPieceThatComesIntoTheTablesIsNoLongerUnknown(t *testing.T) {
	l := yard()
	runs(t, l, `pull SLEDGE home>tarp -> warned unknown_item
		close -> warned open_differences`)
	l.Do(model.Entry{Act: model.Act{Verb: model.Stores}, Stores: &model.InventoryPatch{Put: &model.Department{Items: []model.Item{
		{ID: "SLEDGE", Rig: "R1", Slot: "A", Kind: model.Piece, Quantity: 1, LeastUsable: model.Blank}}}}})
	runs(t, l, `close -> ok
		: SLEDGE home=1`)
}

func TestAMoveBeforeAChangeOfTheTablesIsNotTakenBackButMovedBack(t *testing.T) {
	l := yard()
	runs(t, l, "direct DRILL home>at:V1 -> ok straight_off")
	removed(l, "LIGHT") // the lines stand elsewhere now
	runs(t, l, `correct DRILL at:V1>home -> warned not_ready
		: DRILL home=1 doubt=1
		: BLOCK home=4`)
}

func TestAMoveIsTakenBackInItsOwnSceneOnly(t *testing.T) {
	l := yard()
	runs(t, l, "lend DRILL home>with:MED9 -> ok")
	l.Open("T")
	runs(t, l, `correct DRILL with:MED9>home -> warned not_ready
		: DRILL home=1 doubt=1`)
}

func TestARowAboutAPieceThatItsWriterDidNotKnowMovesNothing(t *testing.T) {
	l := yard()
	b := l.Fork("B")
	l.Do(model.Entry{Act: model.Act{Verb: model.Stores}, Stores: &model.InventoryPatch{Put: &model.Department{Items: []model.Item{
		{ID: "SLEDGE", Rig: "R1", Slot: "A", Kind: model.Piece, Quantity: 1, LeastUsable: model.Blank}}}}})
	b.Clock.Wall += 100
	runs(t, b, "pull SLEDGE home>tarp -> warned unknown_item")
	l.Hear(b)
	runs(t, l, `: SLEDGE home=1
		close -> ok`)
}

func TestFewerPiecesAreNotMoreTaggedOrInDoubtThanThereAre(t *testing.T) {
	l := yard()
	runs(t, l, `check BLANKET 3 read=clean=no -> warned failed
		tag BLANKET -> ok
		tag CONE 5 -> ok`)
	changed(l, "BLANKET", func(it *model.Item) { it.Quantity = 2 })
	changed(l, "CONE", func(it *model.Item) { it.Quantity = 3 })
	runs(t, l, `: BLANKET home=2 tags=1/0 doubt=1
		: CONE home=3 tags=3/0`)
}

func TestScenesSideBySideHaveGroundOfTheirOwn(t *testing.T) {
	l := yard()
	runs(t, l, "pull CONE 2 home>tarp -> ok")
	l.Open("T")
	runs(t, l, `: CONE tarp=0
		close -> ok
		hand CONE tarp>at:V1 -> refused not_there
		direct CONE 3 home>at:V1 -> ok straight_off
		close -> warned items_out`)
	whole := l.State.Account("T", "")
	if whole.Out != 3 || whole.Elsewhere != 2 || !whole.Adds() {
		t.Errorf("%+v", whole)
	}
	l.Scene = "S"
	runs(t, l, ": CONE tarp=2 at:V1=0")
	l.Open("U", "S", "T") // it takes over both
	runs(t, l, `: CONE tarp=2 at:V1=3
		stow CONE 2 tarp>home -> ok`)
	l.Scene = "T" // a row of a device that had not heard
	runs(t, l, "stow CONE 3 at:V1>home -> ok")
	l.Open("V")
	l.Open("W", "U")
	l.Open("X", "V")
	l.Scene = "W"
	runs(t, l, "pull CONE home>tarp -> ok")
	l.Scene = "S" // the one before the one before
	runs(t, l, "hand CONE tarp>at:V1 -> ok")
}
