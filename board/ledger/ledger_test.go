package ledger

import (
	"bytes"
	"database/sql"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"strings"
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

// raw is a connection past the package, as any other program would have.
func raw(t *testing.T, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	return db
}

func TestTheFileItselfRefusesToChangeOrRemoveEntries(t *testing.T) {
	path := filled(t, 3)
	l := mustOpen(t, path)
	noted := entry("A", "S1", 4)
	noted.Note = "words"
	mustAppend(t, l, noted)
	want := all(t, l)
	for _, db := range []*sql.DB{l.write, raw(t, path)} {
		for query, says := range map[string]string{
			"UPDATE entry SET body = '{}'":                               "never changed",
			"UPDATE entry SET n = n + 100":                               "never changed",
			"UPDATE OR REPLACE entry SET id = 'x' WHERE n = 1":           "never changed",
			"DELETE FROM entry":                                          "never removed",
			"DELETE FROM entry WHERE n = 2":                              "never removed",
			"DELETE FROM note":                                           "never removed",
			"UPDATE note SET text = 'other words'":                       "can be blanked, not changed",
			"UPDATE note SET entry = 'x', text = ''":                     "can be blanked, not changed",
			"INSERT OR REPLACE INTO entry SELECT n, id, '{}' FROM entry": "never replaced",
			"INSERT OR REPLACE INTO entry VALUES (2, 'new', '{}')":       "never replaced",
			"REPLACE INTO note SELECT entry, 'other' FROM note":          "",
		} {
			_, err := db.Exec(query)
			if says == "" && err != nil || says != "" && (err == nil || !strings.Contains(err.Error(), says)) {
				t.Errorf("%s: want %q, got %v", query, says, err)
			}
		}
	}
	if got := all(t, l); !reflect.DeepEqual(got, want) {
		t.Errorf("the log changed: %+v", got)
	}
	mustCheck(t, l, 4)
}

func TestABlankedNoteIsNowhereOnTheDisk(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dept")
	l := mustOpen(t, path)
	const secret = "Ottoline Brackwater of 14 Weir Street"
	short, long := entry("A", "S1", 1), entry("A", "S1", 2)
	short.Note, long.Note = secret, strings.Repeat(secret+" ", 500) // the second fills pages of its own
	mustAppend(t, l, short, long)
	onDisk := func() bool {
		for _, end := range []string{"", "-wal", "-shm"} {
			if b, err := os.ReadFile(path + end); err == nil && bytes.Contains(b, []byte(secret)) {
				return true
			}
		}
		return false
	}
	if !onDisk() {
		t.Fatal("the text is not on the disk to begin with")
	}
	for _, e := range []model.Entry{short, long} {
		if err := l.Blank(e.ID); err != nil {
			t.Fatal(err)
		}
	}
	if onDisk() {
		t.Error("the text is still on the disk")
	}
	early := entry("A", "S1", 3)
	early.Note = secret
	if err := l.Blank(early.ID); err != nil {
		t.Fatal(err)
	}
	mustAppend(t, l, early)
	for _, e := range all(t, l) {
		if e.Note != "" {
			t.Errorf("entry %d still says %q", e.N(), e.Note)
		}
	}
	mustCheck(t, l, 3)
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

// The command line tool is the yardstick that this program did not make.
func sqlite3Shell(t *testing.T, path, query string) string {
	t.Helper()
	shell, err := exec.LookPath("sqlite3")
	if err != nil {
		t.Fatal("this test reads the file with the sqlite3 command line tool: install the package sqlite3")
	}
	out, err := exec.Command(shell, "-batch", path, query).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return strings.TrimSpace(string(out))
}

func TestTheSqliteShellDoesTheBooksWithOneQuery(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dept")
	l := mustOpen(t, path)
	home, v1 := model.Place{Kind: model.Home}, model.Place{Kind: model.At, Name: "V1", Ground: "S1"}
	out, refused := entriesOf("A", "S1", 1, 2), entry("A", "S1", 3)
	out[0].Moves = []model.Move{{Item: "X", N: 5, From: home, To: v1}, {Item: "Y", N: 1, From: home, To: model.Place{Kind: model.Used}}}
	out[1].Moves = []model.Move{{Item: "X", N: 2, From: v1, To: home}}
	refused.Reply.Word = model.Refused
	out[1].Note = "two came back"
	mustAppend(t, l, append(out, refused)...)
	books := `WITH leg(item, place, n) AS (SELECT item, to_place, quantity FROM move
		UNION ALL SELECT item, from_place, -quantity FROM move)
		SELECT item, place, sum(n) FROM leg GROUP BY item, place ORDER BY item, place`
	if got, want := sqlite3Shell(t, path, books), "X|at:V1|3\nX|home|-3\nY|home|-1\nY|used|1"; got != want {
		t.Errorf("the books say\n%s\nwant\n%s", got, want)
	}
	if got, want := sqlite3Shell(t, path, "SELECT n, device, scene, verb, reply, note FROM act WHERE n > 1"),
		"2|A|S1|hand|warned|two came back\n3|A|S1|hand|refused|"; got != want {
		t.Errorf("the log says\n%s\nwant\n%s", got, want)
	}
	if got := sqlite3Shell(t, path, "PRAGMA integrity_check"); got != "ok" {
		t.Error(got)
	}
	shell, err := exec.Command("sqlite3", path, "DELETE FROM entry").CombinedOutput()
	if err == nil || !strings.Contains(string(shell), "never removed") {
		t.Errorf("the shell could remove entries: %s", shell)
	}
}

func TestCheckNamesWhatIsWrong(t *testing.T) {
	for name, harm := range map[string]struct{ sql, says string }{
		"no guard":    {"DROP TRIGGER entry_stays", "entry_stays of the file is missing"},
		"weak guard":  {"DROP TRIGGER note_stays; CREATE TRIGGER note_stays BEFORE DELETE ON note BEGIN SELECT 1; END", "note_stays of the file has been changed"},
		"removed":     {"DROP TRIGGER entry_stays; DELETE FROM entry WHERE n = 2", "entry 2 is missing"},
		"not JSON":    {"INSERT INTO entry (id, body) VALUES ('x', 'y')", "entry 5 cannot be read"},
		"two ids":     {"INSERT INTO entry (id, body) SELECT 'x', body FROM entry WHERE n = 2", "entry 5 has two ids"},
		"newer":       {`INSERT INTO entry (id, body) SELECT '00000000-0000-4000-8000-000000000001', json_set(body, '$.format', 99, '$.id', '00000000-0000-4000-8000-000000000001') FROM entry WHERE n = 2`, "entry 5 is of format 99"},
		"other scene": {`INSERT INTO entry (id, body) SELECT '00000000-0000-4000-8000-000000000001', json_set(body, '$.scene', 'S9', '$.id', '00000000-0000-4000-8000-000000000001') FROM entry WHERE n = 2`, `entry 5 is not listed under its scene "S9"`},
		"twice":       {"INSERT INTO entry (id, body) SELECT id, body FROM entry WHERE n = 2", "is there more than once"},
		"not filed":   {"DELETE FROM filed WHERE id = (SELECT id FROM entry WHERE n = 2)", "would not be found by its id"},
		"filed":       {"INSERT INTO filed VALUES ('nobody')", "an id nobody without its entry"},
		"vector":      {`UPDATE run SET vector = '{"A":7}'`, "before entry 1"},
		"note":        {"INSERT INTO note VALUES ('nobody', 'x')", "a note for an entry nobody"},
		"balance":     {"INSERT INTO balance VALUES ('S1', 5, 1, 0, 'A', '{}', x'')", "the balance S1"},
	} {
		t.Run(name, func(t *testing.T) {
			path := filled(t, 4)
			if name == "not filed" { // needs a run that has ended
				l := mustOpen(t, path)
				mustAppend(t, l, entry("A", "S2", 5))
				mustClose(t, l)
			}
			if _, err := raw(t, path).Exec(harm.sql); err != nil {
				t.Fatal(err)
			}
			l, err := Open(path, Options{})
			if err != nil { // the end of the log is read at the start
				if wantTrouble(t, err); name != "not JSON" {
					t.Fatal(err)
				}
				return
			}
			defer l.Close()
			r, err := l.Check()
			if err != nil || !strings.Contains(strings.Join(r.Problems, "\n"), harm.says) {
				t.Errorf("want %q, got %q, %v", harm.says, r.Problems, err)
			}
		})
	}
}

func FuzzDecodeEntry(f *testing.F) {
	for n := range 3 {
		e := entry("A", "S1", n+1)
		body, err := encode(&e)
		if err != nil {
			f.Fatal(err)
		}
		f.Add([]byte(body))
	}
	f.Add([]byte(`{"id":"00000000-0000-4000-8000-000000000001","stamp":{"w":1,"d":"A"},"moves":[{"from":"at:","to":""}]}`))
	f.Add([]byte(`null`))
	f.Fuzz(func(t *testing.T, body []byte) {
		e, err := decode(body, "note")
		if err != nil {
			return
		}
		again, err := encode(&e)
		if err != nil {
			t.Fatalf("read but cannot be written: %v", err)
		}
		twice, err := decode([]byte(again), "note")
		if err != nil {
			t.Fatalf("written but cannot be read: %v\n%s", err, again)
		}
		third, err := encode(&twice)
		if err != nil || third != again {
			t.Fatalf("another form each time: %v\n%s\n%s", err, again, third)
		}
	})
}
