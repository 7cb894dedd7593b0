package main

import (
	"bufio"
	"bytes"
	"database/sql"
	"encoding/csv"
	"fmt"
	"io"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"tarpside/board"
	"tarpside/board/ledger"
	"tarpside/model"
)

const killRounds = 200

// longRows are more than a round has time for. Rows come in taps of one to
// four; some have notes, some are refused.
const longRows = 1500

// A longScene names each row by its holder, so that its entry is found again.
type longScene struct {
	round int
	tap   []int // the tap of each row, from row 1
}

func (s *longScene) holder(seq int) string { return fmt.Sprintf("round %d row %d", s.round, seq) }

// text is the scene file.
func (s *longScene) text(r *rand.Rand) string {
	var b strings.Builder
	b.WriteString("seq,act,minute,device,verb,by,item,rig,quantity,from,to,holder,reading,note\n")
	s.tap = []int{0}
	left := 0
	for seq := 1; seq <= longRows; seq++ {
		tap := s.tap[seq-1]
		if left == 0 {
			tap, left = tap+1, 1+r.Intn(4)
		}
		left--
		s.tap = append(s.tap, tap)
		act := "open,M01,,,,,"
		if seq > 1 {
			item := fmt.Sprintf("R41-%03d", 1+r.Intn(6))
			act = [...]string{"pull,M06," + item + ",,1,home,tarp", "return,M06," + item + ",,1,at:V1,tarp",
				"hand,M06," + item + ",,1,tarp,at:V1", "correct,M06," + item + ",,1,tarp,home"}[r.Intn(4)]
		}
		note := ""
		if r.Intn(3) == 0 {
			note = fmt.Sprintf("note of row %d", seq)
		}
		fmt.Fprintf(&b, "%d,%d,%d,A,%s,%s,,%s\n", seq, tap, seq/10, act, s.holder(seq), note)
	}
	return b.String()
}

// acknowledged are the replies of which the whole line came out.
func acknowledged(r io.Reader, each func(n int)) (lines []string) {
	in := bufio.NewReader(r)
	for {
		line, err := in.ReadString('\n')
		if err != nil {
			return lines // what came without its end does not count
		}
		lines = append(lines, line)
		each(len(lines) - 1)
	}
}

// killedReplay replays the scene in a program of its own and kills it: after
// so many replies or, with 0, after the time. It returns the replies.
func killedReplay(t *testing.T, db, scene string, after int, delay time.Duration) []string {
	t.Helper()
	cmd := exec.Command(program, "-db", db, "replay", scene, "-replies", "-")
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	if after == 0 {
		timer := time.AfterFunc(delay, func() { cmd.Process.Kill() })
		defer timer.Stop()
	}
	lines := acknowledged(out, func(n int) {
		if n == after && n > 0 {
			cmd.Process.Kill()
		}
	})
	if err := cmd.Wait(); err == nil {
		t.Fatalf("it was through with %d rows before it was killed: more rows are needed", len(lines)-1)
	}
	if errs.Len() > 0 {
		t.Fatalf("it was not killed, it stopped: %s", errs.String())
	}
	if len(lines) > 0 {
		lines = lines[1:] // the header
	}
	return lines
}

// survivors opens the file and returns its entries of the round in their
// order.
func survivors(t *testing.T, db string, round int) (own []model.Entry) {
	t.Helper()
	b, err := board.Open(db, board.Options{Now: time.Now, Random: rand.New(rand.NewSource(1)), Ledger: ledger.Options{}})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if why := b.Picture().ReadOnly; why != "" {
		t.Fatal(why)
	}
	if bad := b.Picture().State.Unbalanced(); len(bad) > 0 {
		t.Errorf("%d lines do not add up", len(bad))
	}
	for _, e := range b.Picture().Entries {
		if strings.HasPrefix(e.Holder, fmt.Sprintf("round %d row ", round)) {
			own = append(own, e)
		}
	}
	if round%25 == 0 {
		findings, err := b.Verify()
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range findings {
			if !f.OK {
				t.Error(f.Words)
			}
		}
	}
	return own
}

// integrity asks SQLite itself about the file, and counts the entries.
func integrity(t *testing.T, db string) (entries int) {
	t.Helper()
	raw, err := sql.Open("sqlite", db)
	if err != nil {
		t.Fatal(err)
	}
	defer raw.Close()
	var said string
	if err := raw.QueryRow("PRAGMA integrity_check").Scan(&said); err != nil || said != "ok" {
		t.Errorf("integrity_check says %q, %v", said, err)
	}
	if err := raw.QueryRow("SELECT count(*) FROM entry").Scan(&entries); err != nil {
		t.Error(err)
	}
	return entries
}

// sameRow checks that an entry is what its acknowledgement said.
func sameRow(t *testing.T, e model.Entry, line string) {
	t.Helper()
	row, err := csv.NewReader(strings.NewReader(line)).Read()
	if err != nil {
		t.Fatalf("%q: %v", line, err)
	}
	if row[1] != string(e.Reply.Word) || row[2] != strings.Join(e.Reply.Reasons, ";") || row[3] != e.Reply.Text {
		t.Errorf("row %s was answered %q, its entry has %+v", row[0], row, e.Reply)
	}
}

func TestNothingAcknowledgedIsLost(t *testing.T) {
	r := rand.New(rand.NewSource(1961))
	loaded := newDesk(t)
	loaded.now = time.Now() // the clock of the programs that go on with it
	loaded.must("stores", "load", demoTables)
	dir := t.TempDir()
	scenePath := filepath.Join(dir, "scene.csv")
	db, kept, files, acked, unsaid := "", 0, 0, 0, 0
	for round := 1; round <= killRounds; round++ {
		if db == "" || r.Intn(4) == 0 { // a fresh file; else the one that was killed goes on
			files++
			db, kept = filepath.Join(dir, fmt.Sprintf("%d.db", files)), 1
			loaded.must("backup", db)
		}
		s := &longScene{round: round}
		if err := os.WriteFile(scenePath, []byte(s.text(r)), 0o644); err != nil {
			t.Fatal(err)
		}
		after, delay := 0, time.Duration(r.Intn(120))*time.Millisecond
		if r.Intn(2) == 0 {
			after = 1 + r.Intn(80)
		}
		lines := killedReplay(t, db, scenePath, after, delay)

		if round%10 == 0 { // a list, before anybody has put the file in order
			reader := newDesk(t)
			reader.db, reader.now = db, time.Now()
			reader.must("-csv", "where")
		}
		own, all := survivors(t, db, round), integrity(t, db)
		if all != kept+len(own) {
			t.Fatalf("round %d: %d entries in all, want %d of before and %d", round, all, kept, len(own))
		}
		kept = all
		for i, e := range own {
			if e.Holder != s.holder(i+1) {
				t.Fatalf("round %d: %q stands where row %d should", round, e.Holder, i+1)
			}
			if strings.Contains(e.Note, "note of row") && e.Note != "note of row "+strconv.Itoa(i+1) {
				t.Errorf("round %d row %d has the note %q", round, i+1, e.Note)
			}
		}
		if len(own) < len(lines) {
			t.Fatalf("round %d: %d rows were acknowledged, %d are there", round, len(lines), len(own))
		}
		for i, line := range lines {
			sameRow(t, own[i], line)
		}
		if n := len(own); n > 0 && n < longRows && s.tap[n] == s.tap[n+1] {
			t.Errorf("round %d: of tap %d only a part is there", round, s.tap[n])
		}
		acked, unsaid = acked+len(lines), unsaid+len(own)-len(lines)
	}
	if acked < 10*killRounds {
		t.Errorf("only %d rows were acknowledged in %d rounds: the test proves little", acked, killRounds)
	}
	t.Logf("%d rounds on %d files: %d rows acknowledged, all there; %d more safe but not yet acknowledged", killRounds, files, acked, unsaid)
}
