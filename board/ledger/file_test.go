package ledger

import (
	"bytes"
	"database/sql"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"tarpside/model"
)

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
