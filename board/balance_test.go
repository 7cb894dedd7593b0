package board_test

import (
	"database/sql"
	"errors"
	"strings"
	"testing"
	"time"

	_ "modernc.org/sqlite" // to spoil a file from outside

	"tarpside/board"
	"tarpside/board/ledger"
	"tarpside/model"
)

// spoil runs a statement on the closed file, past the program.
func spoil(t *testing.T, path, query string, args ...any) {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	res, err := db.Exec(query, args...)
	if err != nil {
		t.Fatal(err)
	}
	if n, err := res.RowsAffected(); err != nil || n == 0 {
		t.Fatal(query, " changed ", n, err)
	}
}

// aScene opens a scene, moves a few pieces in it and closes it.
func aScene(t *testing.T, b *tablet, name string) {
	t.Helper()
	b.clock.passes(time.Hour)
	b.begin(t, name)
	b.log(t, act(model.PullOff, 4, "R41-059", "home", "tarp"))
	b.log(t, act(model.Hand, 4, "R41-059", "tarp", "at:V1"))
	b.log(t, act(model.Handover, 1, "R41-003", "home", "with:MED9"))
	b.log(t, act(model.BringBack, 1, "R41-003", "with:MED9", "home"))
	b.log(t, act(model.Return, 4, "R41-059", "at:V1", "tarp"))
	b.log(t, model.Act{Verb: model.Stow, By: "M06", Item: "R41-059", Quantity: 4, From: "tarp", To: "home", Reading: "as_is"})
	b.log(t, word(model.Close))
}

func TestAStartFoldsOnlyWhatCameSinceTheBalance(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	for _, name := range []string{"one", "two", "three"} {
		aScene(t, b, name)
	}
	total := b.Picture().State.Folded()
	if balance, ok := kept(t, b.path); !ok || balance.Covers != total {
		t.Fatalf("a balance of %d of %d entries is kept: %v", balance.Covers, total, ok)
	}
	reopensTheSame(t, b)
	if n := len(b.Picture().Entries); n != 0 {
		t.Errorf("%d entries were read again", n)
	}
	b.begin(t, "four")
	b.log(t, act(model.PullOff, 2, "R41-059", "home", "tarp"))
	reopensTheSame(t, b)
	if n, folded := len(b.Picture().Entries), b.Picture().State.Folded(); n != 2 || folded != total+2 {
		t.Errorf("%d entries were read, the fold has %d of %d", n, folded, total+2)
	}
	if got, want := b.blob(t), blob(t, model.Fold(entriesIn(t, b.path))); got != want {
		t.Errorf("from the balance it is\n%s\nand from the first entry\n%s", got, want)
	}
}

func TestThePictureLetsGoOfClosedScenes(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	for _, name := range []string{"one", "two", "three"} {
		aScene(t, b, name)
		if es := b.Picture().Entries; len(es) != 8 || es[0].Verb != model.Open {
			t.Errorf("scene %s: %d entries, the first is %s", name, len(es), es[0].Verb)
		}
	}
}

func TestATabletThatNeverClosesASceneKeepsABalanceToo(t *testing.T) {
	tablets := crew(t, small(t), "A", "B")
	a, b := tablets[0], tablets[1]
	aScene(t, a, "theirs")
	b.add(t, entriesIn(t, a.path)...)
	if balance, ok := kept(t, b.path); !ok || balance.Covers != b.Picture().State.Folded() {
		t.Errorf("kept %v: %d of %d entries", ok, balance.Covers, b.Picture().State.Folded())
	}
	reopensTheSame(t, b)
}

func TestALateEntryIsFoldedWhereItBelongs(t *testing.T) {
	for _, slow := range []bool{true, false} { // stamped before the balance, or after it by a clock that is ahead
		tablets := crew(t, small(t), "A", "B")
		a, b := tablets[0], tablets[1]
		aScene(t, a, "first")
		b.add(t, entriesIn(t, a.path)...)
		a.clock.passes(time.Hour)
		a.begin(t, "second")
		a.log(t, act(model.PullOff, 4, "R41-059", "home", "tarp"))
		b.add(t, entriesIn(t, a.path)...) // and now B is cut off
		a.log(t, act(model.Hand, 4, "R41-059", "tarp", "at:V1"))
		a.log(t, act(model.MoveTo, 4, "R41-059", "at:V1", "at:ROAD"))
		if b.clock.now = a.clock.now.Add(-time.Second); !slow {
			b.clock.passes(3 * time.Minute)
		}
		late := b.log(t, act(model.Hand, 2, "R41-059", "tarp", "at:V2"))
		a.log(t, word(model.Close))
		first, _ := kept(t, b.path)
		if last, ok := kept(t, a.path); !ok || last.Covers <= first.Covers {
			t.Fatal("no balance at the close", last.Covers, first.Covers)
		}
		a.add(t, late)
		if a.Picture().State.LineOf("R41-059").Contest == nil {
			t.Errorf("slow %v: the late entry is not in the fold", slow)
		}
		b.add(t, entriesIn(t, a.path)...)
		alike(t, a, b)
		reopensTheSame(t, a)
		aScene(t, a, "third")
		reopensTheSame(t, a)
	}
}

// Coming back after a close, a tablet must not make the others read ten years.
func TestALateEntryGoesBackOnlyToTheBalanceBeforeIt(t *testing.T) {
	tablets := crew(t, small(t), "A", "B")
	a, b := tablets[0], tablets[1]
	a.begin(t, "long")
	for range 300 {
		a.log(t, word(model.Note))
	}
	a.log(t, word(model.Close))
	b.add(t, entriesIn(t, a.path)...)
	before, _ := kept(t, a.path)
	a.begin(t, "next")
	b.add(t, a.Picture().Entries...)
	late := b.log(t, act(model.PullOff, 1, "R41-059", "home", "tarp"))
	for range 300 {
		a.log(t, word(model.Note))
	}
	a.log(t, word(model.Close))
	a.begin(t, "third")
	a.add(t, late)
	if balance, ok := kept(t, a.path); !ok || balance.Covers != before.Covers {
		t.Errorf("kept %v, of %d entries; want the one of %d", ok, balance.Covers, before.Covers)
	}
	if n := len(a.Picture().Entries); n > 310 {
		t.Errorf("%d entries were folded again", n)
	}
	b.add(t, entriesIn(t, a.path)...)
	alike(t, a, b)
}

func TestAMoveIsTakenBackAfterTheCloseAsBefore(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	b.begin(t, "Undo")
	b.log(t, act(model.PullOff, 1, "R41-003", "home", "tarp"))
	b.log(t, act(model.Hand, 1, "R41-003", "tarp", "at:V1"))
	b.log(t, model.Act{Verb: model.Return, By: "M06", Item: "R41-003", Quantity: 1, From: "at:V1", To: "tarp"})
	home := b.log(t, model.Act{Verb: model.Stow, By: "M06", Item: "R41-003", Quantity: 1, From: "tarp", To: "home", Reading: "as_is"})
	if home.Reply.Word == model.Refused {
		t.Fatal(home.Reply)
	}
	b.log(t, word(model.Close))
	b.log(t, act(model.Correct, 1, "R41-003", "home", "tarp")) // undoes the stow, its doubt included
	if l := b.Picture().State.LineOf("R41-003"); l.Doubt != 0 || len(l.Open) != 0 {
		t.Fatalf("it was no undo: %+v", l)
	}
	reopensTheSame(t, b)
	aScene(t, b, "next")
	b.log(t, act(model.Correct, 4, "R41-059", "home", "tarp"))
	reopensTheSame(t, b)
}

// Rule: what must come to settle a contest is taken from where the line's
// moves put pieces, in whatever scene that was.
func TestASettleFindsPiecesThatAnEarlierScenePlaced(t *testing.T) {
	for _, restart := range []bool{false, true} {
		tablets := crew(t, small(t), "A", "B")
		a, b := tablets[0], tablets[1]
		a.begin(t, "first")
		a.log(t, act(model.Lend, 2, "R41-059", "home", "with:RDCREW"))
		a.log(t, act(model.PullOff, 4, "R41-059", "home", "tarp"))
		a.log(t, word(model.Close))
		a.begin(t, "second")
		a.log(t, act(model.Hand, 1, "R41-059", "tarp", "at:V1"))
		b.add(t, entriesIn(t, a.path)...)
		a.log(t, act(model.MoveTo, 1, "R41-059", "at:V1", "at:V2"))
		b.log(t, act(model.Return, 1, "R41-059", "at:V1", "tarp"))
		a.add(t, entriesIn(t, b.path)...)
		if restart {
			a.reopen(t)
		}
		e := a.log(t, model.Act{Verb: model.Settle, By: "M06", Item: "R41-059", Quantity: 6, To: "at:V1"})
		if e.Reply.Word != model.OK || a.n(t, "R41-059", "at:V1") != 6 {
			t.Errorf("restarted %v: %+v, %d at V1", restart, e.Reply, a.n(t, "R41-059", "at:V1"))
		}
		a.sound(t)
	}
}

func TestASpoiledBalanceIsNotUsedAndMadeAnew(t *testing.T) {
	for name, query := range map[string]string{
		"no form at all":  "UPDATE balance SET blob = x'7b00ff'",
		"empty":           "UPDATE balance SET blob = x''",
		"one bit":         "UPDATE balance SET blob = CAST(substr(blob, 1, 5000) || '0' || substr(blob, 5002) AS BLOB) WHERE substr(blob, 5001, 1) <> CAST('0' AS BLOB)",
		"cut short":       "UPDATE balance SET blob = substr(blob, 1, length(blob) / 2)",
		"no vector":       "UPDATE balance SET vector = 'x'",
		"covers too much": "UPDATE balance SET covers = covers + 5",
		"covers too few":  "UPDATE balance SET covers = covers - 3",
		"covers nothing":  "UPDATE balance SET covers = 0",
		"another moment":  "UPDATE balance SET wall = wall + 1000",
	} {
		t.Run(name, func(t *testing.T) {
			b := newTablet(t, "A").withDemo(t)
			aScene(t, b, "one")
			was := b.blob(t)
			b.shut(t)
			spoil(t, b.path, query)
			b.open(t)
			if is := b.blob(t); is != was {
				t.Errorf("it shows\n%s\nand showed\n%s", is, was)
			}
			aScene(t, b, "two")
			reopensTheSame(t, b)
			if len(b.Picture().Entries) != 0 {
				t.Error("no balance was made anew")
			}
		})
	}
}

func TestABalanceOfAnotherFormatIsNotUsedAndMadeAnew(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	aScene(t, b, "one")
	forge(t, b, func(text string) string { return strings.Replace(text, `{"format":`, `{"format":9`, 1) })
	reopensTheSame(t, b)
	if balance, ok := kept(t, b.path); !ok || strings.Contains(string(balance.Blob), `{"format":9`) {
		t.Error("it is kept")
	}
}

// forge changes the balance that is kept and puts it back as if the board had
// made it so.
func forge(t *testing.T, b *tablet, change func(string) string) {
	t.Helper()
	balance, ok := kept(t, b.path)
	if !ok {
		t.Fatal("there is no balance")
	}
	was := string(board.Unsealed(balance))
	balance.Blob = []byte(change(was))
	if string(balance.Blob) == was {
		t.Fatal("nothing in it was changed")
	}
	b.shut(t)
	l, err := ledger.Open(b.path, ledger.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(l.PutBalance(board.Sealed(balance)), l.Close()); err != nil {
		t.Fatal(err)
	}
	b.open(t)
}

func TestVerifyFindsABalanceThatWasTamperedWith(t *testing.T) {
	for name, change := range map[string]func(string) string{
		"a piece more":  func(s string) string { return strings.Replace(s, `"p":"home","n":1}`, `"p":"home","n":2}`, 1) },
		"another place": func(s string) string { return strings.Replace(s, `"p":"home"`, `"p":"lost"`, 1) },
	} {
		b := newTablet(t, "A").withDemo(t)
		aScene(t, b, "one")
		b.sound(t)
		forge(t, b, change)
		if said := findings(t, b); !strings.Contains(said, "the board is the same") || !strings.Contains(said, "The balance kept") {
			t.Errorf("%s: %q", name, said)
		}
	}
	b := newTablet(t, "A").withDemo(t)
	aScene(t, b, "one")
	spoil(t, b.path, "UPDATE balance SET blob = x'00'") // while the board is open
	if said := findings(t, b); !strings.Contains(said, "The balance kept") {
		t.Errorf("not readable: %q", said)
	}
}

// findings are the words of what Verify did not find as it should be.
func findings(t *testing.T, b *tablet) string {
	t.Helper()
	list, err := b.Verify()
	if err != nil {
		t.Fatal(err)
	}
	var bad []string
	for _, f := range list {
		if !f.OK {
			bad = append(bad, f.Words)
		}
	}
	return strings.Join(bad, "; ")
}

func TestVerifyDoesNotHoldUpTheLog(t *testing.T) {
	b := newTablet(t, "A").withDemo(t)
	b.replay(t, sceneRows(t, demoFiles(t), "scene.csv"))
	done := make(chan string)
	go func() {
		list, err := b.Verify()
		for _, f := range list {
			if !f.OK {
				done <- f.Words
				return
			}
		}
		if err != nil {
			done <- err.Error()
		}
		close(done)
	}()
	for {
		select {
		case bad := <-done:
			if bad != "" {
				t.Error(bad)
			}
			return
		default:
			b.log(t, word(model.Note))
		}
	}
}
