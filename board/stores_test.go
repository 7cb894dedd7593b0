package board_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	_ "modernc.org/sqlite" // to spoil a file from outside

	"tarpside/board"
	"tarpside/board/stores"
	"tarpside/model"
)

func TestABlankedNoteIsGoneFromTheBoardAndTheFile(t *testing.T) {
	const name = "Jane Roe of Fern Street"
	tablets := crew(t, small(t), "A", "B")
	a, b := tablets[0], tablets[1]
	scene := a.begin(t, name)
	opening := a.Picture().Entries[len(a.Picture().Entries)-1]
	tag := a.log(t, model.Act{Verb: model.Tag, By: "M06", Item: "R41-003", Quantity: 1, Note: name})
	a.log(t, word(model.Close)) // a balance has both names
	b.add(t, entriesIn(t, a.path)...)
	for _, e := range []model.Entry{opening, tag} {
		if _, err := a.Log(board.Tap{Mends: e.ID.String(), Acts: []model.Act{word(model.BlankNote)}}); err != nil {
			t.Fatal(err)
		}
	}
	if got := a.Picture().State.Scene(scene).Name; got != "" {
		t.Errorf("the scene is still called %q", got)
	}
	b.add(t, entriesIn(t, a.path)...)
	alike(t, a, b)
	for _, on := range tablets {
		if strings.Contains(on.blob(t), name) || slices.ContainsFunc(on.Picture().Entries, func(e model.Entry) bool { return e.Note == name }) {
			t.Errorf("%s still shows it", on.Picture().Device)
		}
		on.shut(t)
		for _, end := range []string{"", "-wal"} {
			if data, err := os.ReadFile(on.path + end); err == nil && strings.Contains(string(data), name) {
				t.Errorf("it is in %s%s", on.path, end)
			}
		}
		on.open(t)
		on.sound(t)
	}
	b.add(t, opening, tag) // once more, as it was, from a tablet that was away
	if strings.Contains(b.blob(t), name) {
		t.Error("it came back")
	}
}

func TestTheInventoryChangesWhileASceneRuns(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	d, problems := stores.Read(demoFiles(t))
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	load := func() []stores.Change {
		t.Helper()
		dir := t.TempDir()
		if err := stores.Write(dir, d); err != nil {
			t.Fatal(err)
		}
		was := b.blob(t)
		dry, err := b.LoadStores(os.DirFS(dir), "M01", true)
		if err != nil || b.blob(t) != was {
			t.Fatal("a dry load changed the board: ", err)
		}
		changes, err := b.LoadStores(os.DirFS(dir), "M01", false)
		if err != nil || len(changes) != len(dry) {
			t.Fatal(len(changes), len(dry), err)
		}
		return changes
	}
	b.begin(t, "Stock-taking")
	b.log(t, act(model.PullOff, 4, "R41-059", "home", "tarp"))
	old := *d.Item("R41-059")
	it := d.Item("R41-059")
	it.Name, it.Quantity = "Wedge, long", old.Quantity+3
	home := d.Item("R41-003")
	home.Name = "Lantern, renamed"
	changes := load()
	if len(changes) != 2 {
		t.Fatalf("%d changes: %v", len(changes), changes)
	}
	s := b.Picture().State
	if got := s.Dept.Item("R41-059"); got.Name != "Wedge, long" || got.Quantity != old.Quantity || !slices.Equal(s.Held(), []string{"R41-059"}) {
		t.Errorf("while pieces are out: %q %d, held %v", got.Name, got.Quantity, s.Held())
	}
	if s.Dept.Item("R41-003").Name != "Lantern, renamed" {
		t.Error("a name waits")
	}
	if again := load(); len(again) != 0 {
		t.Errorf("the same tables once more change %v", again)
	}
	reopensTheSame(t, b)
	b.log(t, model.Act{Verb: model.Stow, By: "M06", Item: "R41-059", Quantity: 4, From: "tarp", To: "home", Reading: "as_is"})
	if got := b.Picture().State; got.Dept.Item("R41-059").Quantity != old.Quantity+3 || b.n(t, "R41-059", "home") != old.Quantity+3 || len(got.Held()) != 0 {
		t.Errorf("once home: %d owned, %d home, held %v", got.Dept.Item("R41-059").Quantity, b.n(t, "R41-059", "home"), got.Held())
	}
	reopensTheSame(t, b)
	b.log(t, word(model.Close))
	reopensTheSame(t, b)
	names := map[string]int{}
	for _, e := range entriesIn(t, b.path) {
		if e.Stores != nil && e.Stores.Put != nil {
			for _, x := range e.Stores.Put.Items {
				if x.ID == "R41-059" {
					names[x.Name]++
				}
			}
		}
	}
	if len(names) != 2 || names[old.Name] != 1 {
		t.Errorf("the history of its names is %v", names)
	}
}

func TestABadTableChangesNothing(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	dir := t.TempDir()
	if err := stores.Write(dir, b.Picture().State.Wanted()); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(dir+"/checks.csv", []byte("check,question\nx,y\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	was, gen := b.blob(t), b.Picture().Gen
	_, err := b.LoadStores(os.DirFS(dir), "M01", false)
	if problems, ok := err.(stores.Problems); !ok || len(problems) == 0 {
		t.Errorf("%v", err)
	}
	if b.blob(t) != was || b.Picture().Gen != gen {
		t.Error("the board changed")
	}
	out := t.TempDir()
	if err := b.SaveStores(out); err != nil {
		t.Fatal(err)
	}
	if changes, err := b.LoadStores(os.DirFS(out), "M01", false); err != nil || len(changes) != 0 {
		t.Errorf("what was saved differs: %v %v", changes, err)
	}
}
