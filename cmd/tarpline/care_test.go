package main

import (
	"bytes"
	"encoding/csv"
	"math/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tarpside/board"
)

func TestStoresGoThroughAWorkbookAndBack(t *testing.T) {
	d := loadedDesk(t)
	file := filepath.Join(t.TempDir(), "ours.xlsx")
	d.must("stores", "save", file)
	if got := d.must("stores", "load", file); !strings.HasPrefix(got, "The inventory is as these tables say already.") {
		t.Errorf("what was only saved and loaded changed:\n%s", got)
	}
	if err := os.WriteFile(file, []byte("rig,name\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if errs := d.fails(failed, "stores", "load", file, "-dry"); !strings.Contains(errs, "nothing was changed") || !strings.Contains(errs, "ours.xlsx: this is no XLSX workbook") {
		t.Errorf("it says %s", errs)
	}
	if errs := d.fails(failed, "stores", "load", filepath.Join(t.TempDir(), "none.xlsx")); !strings.Contains(errs, "no workbook") {
		t.Errorf("it says %s", errs)
	}
}

func TestTheTablesComeInAndGoOutTheSame(t *testing.T) {
	d := loadedDesk(t)
	dir := t.TempDir()
	d.must("stores", "save", dir)
	if got := d.must("stores", "load", dir); !strings.HasPrefix(got, "The inventory is as these tables say already.") {
		t.Errorf("loaded again: %s", got)
	}
	file := filepath.Join(dir, "items.csv")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	changed := bytes.ReplaceAll(data, []byte("Thermal camera"), []byte("Heat camera"))
	if err := os.WriteFile(file, changed, 0o644); err != nil {
		t.Fatal(err)
	}
	dry := d.must("stores", "load", dir, "-dry")
	for _, w := range []string{"This would change; nothing has", "items       3 changed", `E42-001 changes: name "Thermal camera" becomes "Heat camera"`} {
		if !strings.Contains(dry, w) {
			t.Errorf("%q is not in %s", w, dry)
		}
	}
	fits(t, "dry", dry)
	rows := d.csv("stores", "load", dir, "-dry")
	if len(rows) != 4 || strings.Join(rows[0], ",") != "table,key,what,column,old,new" || strings.Join(rows[2], ",") != "items,E42-001,change,name,Thermal camera,Heat camera" {
		t.Errorf("%q", rows)
	}
	if again := d.must("stores", "load", dir, "-dry"); again != dry {
		t.Error("a trial changed something")
	}
	d.must("stores", "load", dir, "-by", "M02")
	if got := d.csv("proof")[1][1]; got != "Heat camera" {
		t.Errorf("after the load it is called %s", got)
	}
}

func TestATrialLoadMakesNoFile(t *testing.T) {
	d := newDesk(t)
	if out := d.must("stores", "load", demoTables, "-dry"); !strings.Contains(out, "items       325 new") {
		t.Error(out)
	}
	left, err := os.ReadDir(filepath.Dir(d.db))
	if err != nil || len(left) > 0 {
		t.Errorf("%v, %v", left, err)
	}
}

func TestOneBadRowStopsTheLoadAndEveryBadRowIsNamed(t *testing.T) {
	d := loadedDesk(t)
	dir := t.TempDir()
	d.must("stores", "save", dir)
	for file, edit := range map[string][2]string{"rigs.csv": {",6,", ",six,"}, "checks.csv": {"number 0-100", "number 100-0"}} {
		data, err := os.ReadFile(filepath.Join(dir, file))
		if err != nil {
			t.Fatal(err)
		}
		data = bytes.Replace(data, []byte(edit[0]), []byte(edit[1]), 1)
		if err := os.WriteFile(filepath.Join(dir, file), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	before := d.must("-csv", "proof")
	errs := d.fails(failed, "stores", "load", dir)
	for _, w := range []string{"nothing was changed: ", "rigs.csv, row 2, column seats", "checks.csv, row 2, column answer"} {
		if !strings.Contains(errs, w) {
			t.Errorf("%q is not in %s", w, errs)
		}
	}
	if d.must("-csv", "proof") != before {
		t.Error("the inventory was changed all the same")
	}
	if errs := d.fails(failed, "stores", "load", filepath.Join(dir, "none")); !strings.Contains(errs, "there is no folder") {
		t.Error(errs)
	}
}

func TestAMistakeInASceneStopsBeforeTheFirstRow(t *testing.T) {
	d := loadedDesk(t)
	replies := filepath.Join(t.TempDir(), "replies.csv")
	for _, c := range []struct {
		scene string
		says  []string
	}{
		{sceneText("open,M01,,,,,,,", "fly,M06,R41-001,,,home,tarp,,", "pull,M06,R41-002,,1.5,home,tarp,,"),
			[]string{"standard input, row 3, column verb", "standard input, row 4, column quantity"}},
		{"seq,minute,verb\n1,0,open\n", []string{"row 1, column device"}},
		{"", []string{"standard input"}},
	} {
		d.stdin = c.scene
		errs := d.fails(failed, "replay", "-", "-replies", replies)
		for _, w := range append(c.says, "nothing was logged") {
			if !strings.Contains(errs, w) {
				t.Errorf("%q is not in %s", w, errs)
			}
		}
	}
	if errs := d.fails(failed, "replay", "none.csv"); !strings.Contains(errs, "none.csv") || !strings.Contains(errs, "Nothing was logged") {
		t.Error(errs)
	}
	if _, err := os.Stat(replies); err == nil {
		t.Error("replies were written to rows that were not logged")
	}
	if out := d.must("verify"); !strings.Contains(out, "all 1 entries can be read") {
		t.Errorf("something was logged: %s", out)
	}
}

func TestAReplayWithoutAnInventoryLogsNothing(t *testing.T) {
	d := newDesk(t)
	if errs := d.fails(failed, "replay", demoScene); !strings.Contains(errs, "no inventory") || !strings.Contains(errs, "tarpline stores load DIR") {
		t.Error(errs)
	}
	if out := d.must("verify"); !strings.Contains(out, "all 0 entries can be read") {
		t.Error(out)
	}
}

func TestARefusedRowIsNoErrorOfTheReplay(t *testing.T) {
	d := loadedDesk(t)
	d.stdin = sceneText("open,M01,,,,,,,", "return,M06,R41-001,,1,at:V1,tarp,,")
	if out := d.must("replay", "-"); out != "2 rows logged: 1 ok, 0 warned, 1 refused, 0 contested.\n" {
		t.Error(out)
	}
}

func TestRowsAreLoggedWithTheTimeThatTheyHad(t *testing.T) {
	head := "seq,minute,clock,device,verb,by,item,rig,quantity,from,to,holder,reading\n"
	clocked := head + "1,10,18:50,A,open,M01,,,,,,,\n2,40,,A,note,M01,,,,,,,\n"
	plain := head + "1,10,,A,open,M01,,,,,,,\n2,40,,A,note,M01,,,,,,,\n"
	for _, c := range []struct {
		name, scene, now, start, opened string
	}{
		{"by the clock of the first row, today", clocked, "2026-11-26T23:00:00-05:00", "", "2026-11-26T18:50:00-05:00"},
		{"yesterday if a row would lie ahead", clocked, "2026-11-26T19:10:00-05:00", "", "2026-11-25T18:50:00-05:00"},
		{"today from the minute of the last row on", clocked, "2026-11-26T19:20:00-05:00", "", "2026-11-26T18:50:00-05:00"},
		{"without a clock the last row is now", plain, "2026-11-26T23:00:00-05:00", "", "2026-11-26T22:30:00-05:00"},
		{"as given", clocked, "2026-11-26T23:00:00-05:00", "2020-01-02T03:00:00Z", "2020-01-02T03:10:00Z"},
	} {
		d := loadedDesk(t)
		var err error
		if d.now, err = board.ParseTime(c.now); err != nil {
			t.Fatal(err)
		}
		want, err := board.ParseTime(c.opened)
		if err != nil {
			t.Fatal(err)
		}
		d.stdin = c.scene
		args := []string{"replay", "-"}
		if c.start != "" {
			args = append(args, "-start", c.start)
		}
		d.must(args...)
		b, err := board.Open(d.db, (&call{Env: Env{Now: func() time.Time { return d.now }, Random: strings.NewReader("abcdefgh")}}).options(true))
		if err != nil {
			t.Fatal(err)
		}
		if got := time.UnixMilli(b.Picture().State.Scene(b.Picture().Scene).Opened); !got.Equal(want) {
			t.Errorf("%s: opened %s, want %s", c.name, got, want)
		}
		b.Close()
	}
}

func TestRepliesGoToAFileOrToTheScreen(t *testing.T) {
	d := loadedDesk(t)
	file := filepath.Join(t.TempDir(), "replies.csv")
	out := d.must("replay", demoScene, "-until", "14", "-replies", file)
	if out != "25 rows logged: 24 ok, 0 warned, 1 refused, 0 contested.\n" {
		t.Error(out)
	}
	written, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	e := loadedDesk(t)
	code, screen, errs := e.run("replay", demoScene, "-until", "14", "-replies", "-")
	if code != 0 || screen != string(written) {
		t.Errorf("exit %d: the screen has\n%s\nthe file has\n%s", code, screen, written)
	}
	if errs != "tarpline: "+out {
		t.Errorf("beside the table: %s", errs)
	}
	if errs := e.fails(failed, "replay", demoScene, "-replies", filepath.Join(t.TempDir(), "no", "folder.csv")); !strings.Contains(errs, "Nothing was logged") {
		t.Error(errs)
	}
}

func TestABackupIsMadeAndRestored(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "60")
	copied := filepath.Join(t.TempDir(), "copy.db")
	d.must("backup", copied)
	if errs := d.fails(failed, "backup", copied); !strings.Contains(errs, "There is a file copy.db already") {
		t.Error(errs)
	}
	want := d.must("-csv", "where")
	d.replies("open,M01,,,,,,,", "pull,M06,R41-003,,1,home,tarp,,")
	if errs := d.fails(failed, "restore", copied); !strings.Contains(errs, "-replace") {
		t.Error(errs)
	}
	if d.must("-csv", "where") == want {
		t.Fatal("a restore that was refused changed the file")
	}
	out := d.must("restore", copied, "-replace")
	kept := d.db + ".before-20261126-070000"
	if !strings.Contains(out, kept) {
		t.Errorf("it does not say where the old file is: %s", out)
	}
	if d.must("-csv", "where") != want {
		t.Error("the restored file is not as the backup was")
	}
	e := newDesk(t)
	e.db = kept
	if !strings.Contains(e.must("where"), "R41-003") {
		t.Error("the old file was not kept as it was")
	}
	e.db = filepath.Join(t.TempDir(), "fresh.db")
	e.must("restore", copied)
	e.must("verify")
}

func TestVerifySaysWhatIsWrongAndExits1(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "20")
	rows := d.csv("verify")
	if len(rows) < 4 || strings.Join(rows[0], ",") != "ok,what" {
		t.Fatalf("%q", rows)
	}
	sqlite(t, d.db, "DROP TRIGGER entry_stays; DELETE FROM entry WHERE n = 9;")
	code, out, errs := d.run("verify")
	if code != failed || !strings.Contains(out, "WRONG  entry 9 is missing") || !strings.Contains(errs, "Keep the file as it is") {
		t.Errorf("exit %d: %s%s", code, out, errs)
	}
	code, out, _ = d.run("verify", "-csv")
	if bad, err := csv.NewReader(strings.NewReader(out)).ReadAll(); err != nil || code != failed || bad[1][0] != "no" {
		t.Errorf("exit %d: %q, %v", code, bad, err)
	}
}

func TestAFileInUseIsReadAndASecondWriterIsToldSo(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "20")
	want := d.must("-csv", "where")
	first, err := board.Open(d.db, board.Options{Now: time.Now, Random: strings.NewReader("abcdefgh")})
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	second, err := board.Open(d.db, board.Options{Now: time.Now, Random: strings.NewReader("abcdefgh")})
	if err != nil || !strings.Contains(second.Picture().ReadOnly, "Another program has department.db open") {
		t.Fatalf("the second is told %q, %v", second.Picture().ReadOnly, err)
	}
	if err := second.Close(); err != nil {
		t.Fatal(err)
	}
	if d.must("-csv", "where") != want {
		t.Error("the list is another while the file is in use")
	}
	d.must("backup", filepath.Join(t.TempDir(), "copy.db"))
	d.must("stores", "save", t.TempDir())
	for _, args := range [][]string{{"replay", demoScene}, {"stores", "load", t.TempDir()}} {
		if errs := d.fails(failed, args...); !strings.Contains(errs, "Another program has department.db open") || !strings.Contains(errs, "nothing was changed") {
			t.Errorf("%q: %s", args, errs)
		}
	}
	if err := first.Close(); err != nil {
		t.Fatal(err)
	}
	d.must("replay", demoScene, "-until", "0")
}

func TestAClockSetBackIsSaidAndLosesNothing(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "20")
	before := d.must("-csv", "where")
	d.now = d.now.Add(-time.Hour)
	code, out, errs := d.run("-csv", "where")
	if code != 0 || out != before || strings.Count(errs, "\n") != 1 || !strings.Contains(errs, "is 1 h behind") || !strings.Contains(errs, "Set the clock") {
		t.Errorf("exit %d: %s", code, errs)
	}
	rows := d.replies("open,M01,,,,,,,", "pull,M06,R41-003,,1,home,tarp,,", "pull,M06,R41-003,,1,home,tarp,,")
	if rows[1][1] != "ok" || rows[2][1] != "refused" {
		t.Errorf("logged with the clock back: %q", rows)
	}
	d.now = d.now.Add(2 * time.Hour)
	d.must("verify")
	if after := d.must("where"); !strings.Contains(after, "R41-003") {
		t.Error("what was logged with the clock back is not there")
	}
}

func TestAFileThatIsCutOrForeignIsAnsweredInWords(t *testing.T) {
	d, _ := playedDesk(t, demoScene, "60")
	whole, err := os.ReadFile(d.db)
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{
		"cut in half": whole[:len(whole)/2], "the first page": whole[:4096], "a few bytes": whole[:50], "words": []byte("item,name\n"),
		"half of it noughts": append(bytes.Clone(whole[:len(whole)/2]), make([]byte, len(whole)/2)...),
	} {
		e := newDesk(t)
		if err := os.WriteFile(e.db, data, 0o644); err != nil {
			t.Fatal(err)
		}
		for _, args := range [][]string{{"where"}, {"proof", "-csv"}, {"verify"}, {"replay", demoScene}, {"stores", "load", demoTables}, {"backup", e.db + ".copy"}} {
			errs := e.fails(failed, args...)
			if !strings.Contains(errs, "department.db") && !strings.Contains(errs, "things are wrong") || strings.Contains(errs, "goroutine") {
				t.Errorf("%s: %q: %s", name, args, errs)
			}
		}
		if is, err := os.ReadFile(e.db); err != nil || !bytes.Equal(is, data) {
			t.Errorf("%s: the file was changed, %v", name, err)
		}
	}
}

func TestTwoTabletsExchangeTheirLogsByStick(t *testing.T) {
	a, b := loadedDesk(t), newDesk(t)
	b.random = rand.New(rand.NewSource(42))
	file := filepath.Join(t.TempDir(), "log.tarpside")
	a.must("replay", demoScene, "-until", "30")
	if got := a.must("stick", "save", file); !strings.Contains(got, "entries of the log are in "+file) {
		t.Errorf("it says %s", got)
	}
	if got := b.must("stick", "load", file); !strings.Contains(got, "were new here") {
		t.Errorf("it says %s", got)
	}
	if got := b.must("stick", "load", file); !strings.Contains(got, "Nothing was changed") {
		t.Errorf("it says %s", got)
	}
	if x, y := a.must("where", "-csv"), b.must("where", "-csv"); x != y {
		t.Error("they do not agree")
	}
	if errs := b.fails(failed, "stick", "load", demoScene); !strings.Contains(errs, "Nothing of it was taken in") {
		t.Errorf("it says %s", errs)
	}
	if errs := b.fails(misused, "stick", "move", file); !strings.Contains(errs, "stick save FILE") {
		t.Errorf("it says %s", errs)
	}
	b.must("verify")
}

func TestPaperIsEnteredAfterwardsInItsMinute(t *testing.T) {
	d := loadedDesk(t)
	d.must("replay", demoScene, "-until", "30", "-start", "2026-11-26T04:00:00Z")
	d.stdin = "time;quantity;piece;to;who\r\n06:40;1;R41-003;BANK;M06\r\n06:41;?;?;tarp;\r\n"
	before := d.must("where", "-csv")
	if got := d.must("enter", "-", "-by", "M04", "-dry"); !strings.Contains(got, "nothing is. 2 lines") || !strings.Contains(got, "06:40") || !strings.Contains(got, "warned") {
		t.Errorf("it says %s", got)
	}
	if d.must("where", "-csv") != before {
		t.Error("a trial changed something")
	}
	if got := d.must("enter", "-", "-by", "M04"); !strings.Contains(got, "2 lines from paper are logged") {
		t.Errorf("it says %s", got)
	}
	if d.must("where", "-csv") == before {
		t.Error("nothing moved")
	}
	d.stdin = "time,quantity,piece,to,who\n06:40,1,excavator,V2,M06\n"
	if errs := d.fails(failed, "enter", "-"); !strings.Contains(errs, "standard input, row 2, column piece") {
		t.Errorf("it says %s", errs)
	}
	d.stdin = "time,piece\n"
	if errs := d.fails(failed, "enter", "-"); !strings.Contains(errs, "column quantity") {
		t.Errorf("it says %s", errs)
	}
	d.must("verify")
}
