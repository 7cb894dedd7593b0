package ledger

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/google/uuid"
	"pgregory.net/rapid"

	"tarpside/model"
)

func TestWhatWasAppendedIsThereAfterReopening(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a folder with % ? # and &", "dept.tarpside")
	if err := os.Mkdir(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	want := entriesOf("A", "S1", 1, 300)
	want[3].Note = "the long chain, not the short one; \x00 and \" and 'ü'"
	want[4].Verdict = &model.Verdict{Waved: []string{"battery=70"}, Open: []string{"battery"}, Tagged: true}
	want[5].Stores = &model.InventoryPatch{Put: &model.Department{}, Remove: map[string][]string{"rigs": {"R41"}}, Whole: []string{"pull_lists"}}
	want[6].Moves[0].To.Ground = "S1"
	want[7].Moves, want[7].Typed, want[7].Ahead, want[7].Mends = nil, 99, true, want[6].ID.String()
	want[8].Quantity = model.Blank
	l := mustOpen(t, path)
	mustAppend(t, l, want[:1]...)
	mustAppend(t, l, want[1:50]...)
	for _, e := range want[50:] {
		mustAppend(t, l, e)
	}
	mustClose(t, l)
	l = mustOpen(t, path)
	got := all(t, l)
	for i := range want {
		if !reflect.DeepEqual(got[i], want[i]) {
			t.Fatalf("entry %d\n got %+v\nwant %+v", i+1, got[i], want[i])
		}
	}
	if n, err := l.Count(); n != len(want) || len(got) != len(want) || err != nil {
		t.Errorf("count %d, %d read, want %d: %v", n, len(got), len(want), err)
	}
	mustCheck(t, l, len(want))
}

func TestEntriesMergeToOneSetHoweverTheyArrive(t *testing.T) {
	dir := t.TempDir()
	file := 0
	rapid.Check(t, func(rt *rapid.T) {
		file++
		l, err := Open(filepath.Join(dir, fmt.Sprint(file)), Options{})
		if err != nil {
			rt.Fatal(err)
		}
		defer l.Close()
		scenes := []string{"", "S1", "S2"}
		pool := map[uuid.UUID]model.Entry{}
		vector := model.Vector{}
		taps := rapid.IntRange(1, 12).Draw(rt, "taps")
		for range taps {
			var tap []model.Entry
			fresh := 0
			for range rapid.IntRange(1, 4).Draw(rt, "entries") {
				n := rapid.IntRange(1, 20).Draw(rt, "n")
				e := entry(rapid.SampledFrom([]string{"A", "B"}).Draw(rt, "device"), scenes[n%3], n)
				if _, there := pool[e.ID]; !there {
					fresh++
				}
				pool[e.ID] = e
				vector[e.Device] = max(vector[e.Device], n)
				tap = append(tap, e)
			}
			if added, err := l.Append(tap...); err != nil || added != fresh {
				rt.Fatalf("%d added, want %d: %v", added, fresh, err)
			}
		}
		read := 0
		for _, scene := range scenes {
			list, err := l.ByScene(scene)
			if err != nil {
				rt.Fatal(err)
			}
			for i, e := range list {
				if !reflect.DeepEqual(e, pool[e.ID]) || e.Scene != scene {
					rt.Fatalf("scene %q holds %+v", scene, e)
				}
				if i > 0 && list[i-1].Stamp.Compare(e.Stamp) >= 0 {
					rt.Fatalf("scene %q is not in the order of its stamps", scene)
				}
			}
			read += len(list)
		}
		other, err := Open(l.Path(), Options{ReadOnly: true})
		if err != nil {
			rt.Fatal(err)
		}
		defer other.Close()
		for _, x := range []*Ledger{l, other} {
			if v, err := x.Vector(); err != nil || !reflect.DeepEqual(v, vector) {
				rt.Fatalf("vector %v, want %v: %v", v, vector, err)
			}
		}
		if n, err := l.Count(); n != len(pool) || read != n || err != nil {
			rt.Fatalf("%d entries, %d by scene, want %d: %v", n, read, len(pool), err)
		}
		if r, err := l.Check(); err != nil || len(r.Problems) > 0 {
			rt.Fatalf("%q %v", r.Problems, err)
		}
	})
}

func TestAnEntryThatIsThereIsLeftAsItWas(t *testing.T) {
	l := mustOpen(t, filepath.Join(t.TempDir(), "dept"))
	first := entry("A", "S1", 1)
	first.Note = "first"
	mustAppend(t, l, first)
	again := first
	again.Item, again.Note = "R41-999", "second"
	for range 2 {
		if added, err := l.Append(again); added != 0 || err != nil {
			t.Fatalf("%d added, %v", added, err)
		}
	}
	if added, err := l.Append(again, entry("A", "S1", 2), again); added != 1 || err != nil {
		t.Fatalf("%d added, %v", added, err)
	}
	if got := all(t, l); len(got) != 2 || !reflect.DeepEqual(got[0], first) {
		t.Fatalf("got %+v", got)
	}
	for id, want := range map[uuid.UUID]bool{first.ID: true, entry("A", "S1", 3).ID: false} {
		if has, err := l.Has(id); has != want || err != nil {
			t.Errorf("has %v: %v, %v", id, has, err)
		}
	}
}

func TestATapIsWholeOrAbsent(t *testing.T) {
	l := mustOpen(t, filepath.Join(t.TempDir(), "dept"))
	mustAppend(t, l, entriesOf("A", "S1", 1, 3)...)
	bad := entry("A", "S2", 6)
	bad.ID = uuid.Nil
	added, err := l.Append(entry("A", "S2", 4), entry("A", "S2", 5), bad)
	wantTrouble(t, err)
	// One that only the file refuses, in the middle of the transaction.
	if _, err := l.write.Exec("CREATE TEMP TRIGGER stop BEFORE INSERT ON main.note BEGIN SELECT RAISE(ABORT, 'no'); END"); err != nil {
		t.Fatal(err)
	}
	noted := entry("A", "S3", 6)
	noted.Note = "x"
	added2, err := l.Append(entry("A", "S2", 4), entry("A", "S2", 5), noted)
	wantTrouble(t, err)
	if n, err := l.Count(); n != 3 || added != 0 || added2 != 0 || err != nil {
		t.Fatalf("%d entries, %d and %d added, %v", n, added, added2, err)
	}
	mustAppend(t, l, entriesOf("A", "S1", 4, 5)...)
	mustCheck(t, l, 5)
}

func TestEntriesAfterACountAreThoseThatArrivedLater(t *testing.T) {
	l := mustOpen(t, filepath.Join(t.TempDir(), "dept"))
	mustAppend(t, l, entriesOf("A", "S1", 10, 12)...)
	mustAppend(t, l, entriesOf("A", "S2", 1, 2)...) // late ones
	var got []int
	for e, err := range l.Entries(2) {
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, e.N())
		if _, err := l.Append(entry("B", "S3", 1+len(got))); err != nil { // while reading
			t.Fatal(err)
		}
	}
	if want := []int{12, 1, 2}; !reflect.DeepEqual(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	for range l.Entries(0) {
		break // the rest is let go
	}
	if scenes, err := l.Scenes(); !reflect.DeepEqual(scenes, []string{"S1", "S2", "S3"}) || err != nil {
		t.Errorf("scenes %q, %v", scenes, err)
	}
}

func TestSettingsAreKept(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dept")
	l := mustOpen(t, path)
	for _, v := range []string{"day", "night", ""} {
		if err := l.SetSetting("look", v); err != nil {
			t.Fatal(err)
		}
		if got, err := l.Setting("look"); got != v || err != nil {
			t.Errorf("got %q, want %q: %v", got, v, err)
		}
	}
	if got, err := l.Setting("none"); got != "" || err != nil {
		t.Errorf("a setting nobody made is %q: %v", got, err)
	}
}

func TestALateEntryDropsTheBalancesThatItMakesStale(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dept")
	l := mustOpen(t, path)
	if _, ok, err := l.LatestBalance(); ok || err != nil {
		t.Fatalf("a new file has a balance: %v", err)
	}
	balance := func(key string, n int) Balance {
		return Balance{key, n, entry("A", "", n).Stamp, model.Vector{"A": n}, []byte{0, 1, byte(n)}}
	}
	mustAppend(t, l, entriesOf("A", "S1", 1, 30)...)
	for _, n := range []int{30, 10, 20} {
		if err := l.PutBalance(balance(fmt.Sprint("S", n), n)); err != nil {
			t.Fatal(err)
		}
	}
	mustClose(t, l)
	l = mustOpen(t, path)
	latest := func(want int) {
		t.Helper()
		b, ok, err := l.LatestBalance()
		if err != nil || ok != (want > 0) || ok && !reflect.DeepEqual(b, balance(fmt.Sprint("S", want), want)) {
			t.Errorf("latest %+v %v %v, want S%d", b, ok, err, want)
		}
	}
	latest(30)
	mustAppend(t, l, entry("A", "S1", 31)) // later than all
	latest(30)
	late := entry("B", "S1", 20) // the same time as S20's last, and device B after A
	mustAppend(t, l, late)
	latest(20)
	if added, err := l.Append(entry("A", "S1", 5)); added != 0 || err != nil { // there already
		t.Fatal(added, err)
	}
	latest(20)
	if b, ok, err := l.BalanceOf("S10"); !ok || err != nil || b.Covers != 10 {
		t.Errorf("S10 is %+v %v %v", b, ok, err)
	}
	mustAppend(t, l, entry("B", "S1", 19))
	latest(10)
	if err := l.DropBalancesAfter(entry("A", "", 10).Stamp); err != nil {
		t.Fatal(err)
	}
	latest(0)
	mustCheck(t, l, 33)
}
