package ledger

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"
)

func TestAFileIsMadeFromNothingAndFromAnEmptyOne(t *testing.T) {
	empty := filepath.Join(t.TempDir(), "empty")
	if err := os.WriteFile(empty, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	blank := filepath.Join(t.TempDir(), "version 0") // a database with nothing in it
	if _, err := raw(t, blank).Exec("CREATE TABLE x (y); DROP TABLE x"); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{filepath.Join(t.TempDir(), "new"), empty, blank} {
		l := mustOpen(t, path)
		var app, version int
		if err := l.read.QueryRow("SELECT (SELECT application_id FROM pragma_application_id), (SELECT user_version FROM pragma_user_version)").
			Scan(&app, &version); err != nil || app != appID || version != len(migrations) {
			t.Errorf("%s: application %x, format %d, %v", path, app, version, err)
		}
		mustAppend(t, l, entry("A", "S1", 1))
		mustCheck(t, l, 1)
		mustClose(t, l)
	}
}

func TestAMigrationIsWholeOrAbsent(t *testing.T) {
	path := filled(t, 5)
	db, err := openWriter(path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	state := func() (version, tables int) {
		t.Helper()
		if err := db.QueryRow("SELECT (SELECT user_version FROM pragma_user_version), (SELECT count(*) FROM sqlite_schema WHERE name LIKE 'later%')").
			Scan(&version, &tables); err != nil {
			t.Fatal(err)
		}
		return version, tables
	}
	broken := append(migrations[:len(migrations):len(migrations)], "CREATE TABLE later1 (x); CREATE TABLE later2 (x); no such thing")
	wantTrouble(t, migrate(db, path, broken))
	if v, tables := state(); v != len(migrations) || tables != 0 {
		t.Errorf("after a step that failed: format %d, %d tables", v, tables)
	}
	steps := append(migrations[:len(migrations):len(migrations)], "CREATE TABLE later1 (x)", "ALTER TABLE later1 ADD COLUMN y; CREATE TABLE later2 (x)")
	if err := migrate(db, path, steps); err != nil {
		t.Fatal(err)
	}
	if v, tables := state(); v != len(steps) || tables != 2 {
		t.Errorf("after both steps: format %d, %d tables", v, tables)
	}
}

func TestAFileOfANewerVersionIsRefusedAndLeftAsItIs(t *testing.T) {
	path := filled(t, 5)
	if _, err := raw(t, path).Exec(fmt.Sprintf("PRAGMA journal_mode = DELETE; PRAGMA user_version = %d", len(migrations)+1)); err != nil {
		t.Fatal(err)
	}
	before, beside := sum(t, path), names(t, path)
	for _, opts := range []Options{{}, {ReadOnly: true}} {
		_, err := Open(path, opts)
		if tr := wantTrouble(t, err); !strings.Contains(tr.What, "newer version") {
			t.Error(tr)
		}
	}
	if after := sum(t, path); after != before {
		t.Errorf("the file was %s and is %s", before, after)
	}
	if after := names(t, path); after != beside {
		t.Errorf("beside it was %s and is %s", beside, after)
	}
}

func TestWhatIsNotADepartmentFileIsRefusedAndLeftAsItIs(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	for name, content := range map[string]string{
		"notes.txt": strings.Repeat("not a database ", 1000), "short": "SQLite", "one byte": "x",
		"magic only": "SQLite format 3\x00", "noise": "SQLite format 3\x00" + strings.Repeat("\xff\x00\x81", 5000),
	} {
		if err := os.WriteFile(at(name), []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for name, sql := range map[string]string{
		"other program":  "PRAGMA application_id = 7; CREATE TABLE x (y)",
		"other unmarked": "CREATE TABLE entry (n, id, body)",
		"other in wal":   "PRAGMA journal_mode = WAL; CREATE TABLE x (y)",
	} {
		db := raw(t, at(name))
		if _, err := db.Exec(sql); err != nil {
			t.Fatal(err)
		}
		if err := db.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(at("a folder"), 0o755); err != nil {
		t.Fatal(err)
	}
	beside := names(t, at("x"))
	for _, f := range []string{"notes.txt", "short", "one byte", "magic only", "noise", "other program", "other unmarked", "other in wal", "a folder"} {
		before := ""
		if f != "a folder" {
			before = sum(t, at(f))
		}
		for _, opts := range []Options{{}, {ReadOnly: true}} {
			_, err := Open(at(f), opts)
			wantTrouble(t, err)
		}
		if f != "a folder" && sum(t, at(f)) != before {
			t.Errorf("%s was changed", f)
		}
	}
	if after := names(t, at("x")); after != beside {
		t.Errorf("the folder held %s and holds %s", beside, after)
	}
}

func TestATornFileIsTroubleAndNeverAPanic(t *testing.T) {
	whole, err := os.ReadFile(filled(t, 2000))
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range []int{1, 99, 100, 512, 4095, 4096, 5000, len(whole) / 2, len(whole) - 4096, len(whole) - 1} {
		path := filepath.Join(t.TempDir(), "torn")
		if err := os.WriteFile(path, whole[:part], 0o644); err != nil {
			t.Fatal(err)
		}
		_, err := Open(path, Options{})
		wantTrouble(t, err)
		if got := sum(t, path); !strings.HasPrefix(got, fmt.Sprint(part, " bytes")) {
			t.Errorf("cut to %d, the file is now %s", part, got)
		}
	}
	// A whole file with a page overwritten opens; what reads the page says so.
	found := 0
	for page := 2; page < len(whole)/4096; page += 7 {
		path := filepath.Join(t.TempDir(), "spoilt")
		spoilt := append([]byte(nil), whole...)
		copy(spoilt[page*4096:], strings.Repeat("\xee", 4096))
		if err := os.WriteFile(path, spoilt, 0o644); err != nil {
			t.Fatal(err)
		}
		l, err := Open(path, Options{})
		if err != nil {
			wantTrouble(t, err)
			found++
			continue
		}
		r, err := l.Check()
		if err != nil {
			wantTrouble(t, err)
		}
		if err != nil || len(r.Problems) > 0 {
			found++
		} else {
			t.Errorf("page %d is spoilt and nothing says so", page)
		}
		for _, err := range l.Entries(0) {
			if err != nil {
				wantTrouble(t, err)
			}
		}
		l.Close()
	}
	if found == 0 {
		t.Error("no page was tried")
	}
}

func TestAFileWhoseEndWasNeverBroughtHomeIsReadWhole(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dept")
	l := mustOpen(t, path)
	want := entriesOf("A", "S1", 1, 40)
	mustAppend(t, l, want...)
	// As a power cut leaves it: the file and the log beside it, not closed.
	cut := filepath.Join(t.TempDir(), "cut")
	for _, end := range []string{"", "-wal"} {
		b, err := os.ReadFile(path + end)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(cut+end, b, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if l2 := mustOpen(t, cut); !reflect.DeepEqual(all(t, l2), want) {
		t.Error("not all entries are there")
	}
	// The same with the main file gone empty: nothing is thrown away.
	if err := os.WriteFile(path+"x-wal", []byte("log"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path+"x", nil, 0o644); err != nil {
		t.Fatal(err)
	}
	_, err := Open(path+"x", Options{})
	wantTrouble(t, err)
	if got := sum(t, path+"x-wal"); !strings.HasPrefix(got, "3 bytes") {
		t.Errorf("the log beside the empty file is now %s", got)
	}
}

func TestASecondOpenerReadsAndIsToldWhy(t *testing.T) {
	path := filled(t, 3)
	first := mustOpen(t, path)
	second, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer second.Close()
	ro, why := second.ReadOnly()
	if !ro || !strings.Contains(why, "Another program") {
		t.Errorf("read-only %v: %q", ro, why)
	}
	mustAppend(t, first, entriesOf("A", "S2", 4, 5)...)
	if got := all(t, second); len(got) != 5 {
		t.Errorf("the second sees %d entries", len(got))
	}
	if v, err := second.Vector(); err != nil || v["A"] != 5 {
		t.Errorf("the second's vector is %v, %v", v, err)
	}
	_, err = second.Append(entry("A", "S1", 6))
	wantTrouble(t, err)
	for _, err := range []error{second.Blank(entry("A", "S1", 1).ID), second.SetSetting("a", "b"),
		second.PutBalance(Balance{Key: "S1"}), second.DropBalancesAfter(entry("A", "S1", 1).Stamp)} {
		wantTrouble(t, err)
	}
	mustClose(t, first)
	third := mustOpen(t, path) // the lock is free again
	mustAppend(t, third, entry("A", "S1", 6))
}

func TestNoFileIsMadeForReading(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dept")
	_, err := Open(path, Options{ReadOnly: true})
	wantTrouble(t, err)
	if got := names(t, path); got != "" {
		t.Errorf("made %s", got)
	}
	_, err = Open(filepath.Join(path, "no", "such", "folder"), Options{})
	wantTrouble(t, err)
}

func TestAFullDiskTakesATapWholeOrNotAtAll(t *testing.T) {
	l := mustOpen(t, filepath.Join(t.TempDir(), "dept"))
	mustAppend(t, l, entriesOf("A", "S1", 1, 10)...)
	var pages int
	if err := l.write.QueryRow("PRAGMA page_count").Scan(&pages); err != nil {
		t.Fatal(err)
	}
	if _, err := l.write.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages+4)); err != nil {
		t.Fatal(err)
	}
	fillUp(t, l, 10, func() {
		if _, err := l.write.Exec("PRAGMA max_page_count = 1000000"); err != nil {
			t.Fatal(err)
		}
	})
}

// fillUp appends taps of three until the disk is full, then makes room and
// goes on. The ledger holds n entries of device A.
func fillUp(t *testing.T, l *Ledger, n int, makeRoom func()) {
	t.Helper()
	for tries := 0; ; tries++ {
		tap := entriesOf("A", "S1", n+1, n+3)
		tap[1].Note = strings.Repeat("words ", 50)
		_, err := l.Append(tap...)
		if err != nil {
			if tr := wantTrouble(t, err); !strings.Contains(tr.What, "full") {
				t.Fatal(tr)
			}
			break
		}
		if n += 3; tries > 100_000 {
			t.Fatal("the disk never was full")
		}
	}
	_, one := l.Append(entry("A", "S1", n+1)) // alone, on the short way
	if one != nil {
		wantTrouble(t, one)
	} else {
		n++
	}
	if got := all(t, l); len(got) != n {
		t.Fatalf("%d entries are there, want %d", len(got), n)
	}
	makeRoom()
	mustAppend(t, l, entriesOf("A", "S1", n+1, n+9)...)
	mustCheck(t, l, n+9)
	if v, err := l.Vector(); err != nil || v["A"] != n+9 {
		t.Errorf("vector %v, %v", v, err)
	}
}

func TestABackupIsEqualAndOverwritesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dept")
	l := mustOpen(t, path)
	noted := entriesOf("A", "S1", 1, 200)
	noted[7].Note = "words"
	mustAppend(t, l, noted...)
	if err := l.SetSetting("look", "night"); err != nil {
		t.Fatal(err)
	}
	copied := filepath.Join(t.TempDir(), "copy of %41")
	if err := l.Backup(copied); err != nil {
		t.Fatal(err)
	}
	before := sum(t, copied)
	wantTrouble(t, l.Backup(copied))
	wantTrouble(t, l.Backup(path))
	wantTrouble(t, l.Backup(filepath.Join(path, "no folder")))
	if after := sum(t, copied); after != before {
		t.Errorf("the copy was %s and is %s", before, after)
	}
	if got := names(t, copied); got != "copy of %41 " {
		t.Errorf("beside the copy lies %s", got)
	}
	b, err := Open(copied, Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	restored := filepath.Join(t.TempDir(), "restored")
	if err := b.Backup(restored); err != nil {
		t.Fatal(err)
	}
	r := mustOpen(t, restored)
	if got := all(t, r); !reflect.DeepEqual(got, noted) {
		t.Errorf("%d entries are restored", len(got))
	}
	if look, err := r.Setting("look"); look != "night" || err != nil {
		t.Errorf("the setting is %q, %v", look, err)
	}
	mustCheck(t, r, 200)
	mustAppend(t, r, entry("A", "S1", 201))
}

func TestABackupDuringAppendsIsOfOneMoment(t *testing.T) {
	l := mustOpen(t, filepath.Join(t.TempDir(), "dept"))
	mustAppend(t, l, entriesOf("A", "S1", 1, 2000)...)
	var wg sync.WaitGroup
	stop := make(chan struct{})
	appended := 2000
	wg.Go(func() {
		for {
			select {
			case <-stop:
				return
			default:
			}
			if _, err := l.Append(entriesOf("A", "S1", appended+1, appended+5)...); err != nil {
				t.Error(err)
				return
			}
			appended += 5
		}
	})
	dir, least := t.TempDir(), 2000
	for i := range 5 {
		path := filepath.Join(dir, fmt.Sprint(i))
		if err := l.Backup(path); err != nil {
			t.Fatal(err)
		}
		b, err := Open(path, Options{ReadOnly: true})
		if err != nil {
			t.Fatal(err)
		}
		n, err := b.Count()
		if err != nil || n < least || n%5 != 0 {
			t.Errorf("copy %d has %d entries, the one before %d: %v", i, n, least, err)
		}
		least = n
		mustCheck(t, b, n)
		b.Close()
	}
	close(stop)
	wg.Wait()
	mustCheck(t, l, appended)
}
