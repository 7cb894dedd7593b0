package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"tarpside/board"
	"tarpside/board/paper"
)

// practice is a board in a file of its own, which done takes away.
func (c *call) practice() (b *board.Board, done func(), err error) {
	dir, err := os.MkdirTemp("", "tarpside-*")
	if err != nil {
		return nil, nil, fmt.Errorf("no file could be made to practise in: %w. Your own file was not touched", err)
	}
	if b, err = board.Open(filepath.Join(dir, "practice.db"), c.options(false)); err != nil {
		return nil, nil, errors.Join(err, os.RemoveAll(dir))
	}
	return b, func() { b.Close(); os.RemoveAll(dir) }, nil
}

// The moments at which the demo stops to look.
const (
	glanceAt = 60  // hand-over at staging
	loadAt   = 125 // the put-back of the rescue
	endAt    = 180 // all rigs have left
	loadRig  = "R41"
)

// A played demo is the board at its moments, and the replies to the rows.
type played struct {
	start             time.Time
	glance, load, end *board.Picture
	replies           board.Table
	told              []string // the story, line by line
}

func (c *call) demo() error {
	sheet, err := sheetOf(c.sheet)
	if err != nil {
		return err
	}
	b, done, err := c.practice()
	if err != nil {
		return err
	}
	p, err := c.play(b)
	done() // before a reader of the output can end the run
	if err != nil {
		return err
	}
	c.tell(p)
	if c.dir == "" {
		return nil
	}
	names, err := p.save(c.dir)
	if err != nil {
		return fmt.Errorf("the tables could not be written: %w. Your own file was not touched", err)
	}
	c.lines("")
	c.lines(hang("", fmt.Sprintf("The tables are in %s: %s.", c.dir, strings.Join(names, ", ")))...)
	return c.demoPapers(p, sheet)
}

// demoPapers prints the papers of the end, and two of moments before.
func (c *call) demoPapers(p *played, sheet paper.Sheet) error {
	var all []string
	for _, at := range []struct {
		folder string
		p      *board.Picture
		minute int
	}{{"papers_t60", p.glance, glanceAt}, {"papers_t125", p.load, loadAt}, {"papers", p.end, endAt}} {
		names, err := savePapers(at.p, filepath.Join(c.dir, at.folder), paper.Options{Sheet: sheet, Printed: p.start.Add(time.Duration(at.minute) * time.Minute)})
		if err != nil {
			return err
		}
		all = append(all, fmt.Sprintf("%d in %s", len(names), at.folder))
	}
	c.lines("", "The papers are there too, as PDF: "+strings.Join(all, ", ")+".")
	return nil
}

// play loads the demo department and logs its scene.
func (c *call) play(b *board.Board) (*played, error) {
	tables, err := board.DemoTables()
	if err != nil {
		return nil, err
	}
	if _, err := b.LoadStores(tables, "", false); err != nil {
		return nil, err
	}
	rows, err := board.DemoScene()
	if err != nil {
		return nil, err
	}
	p := &played{replies: board.Table{Name: "replies", Columns: []string{"seq", "reply", "reasons", "text"}}}
	if p.start, err = c.minute0(rows); err != nil {
		return nil, err
	}
	s := story{c: c, p: p, d: b.Picture().State.Dept}
	before := b.Picture()
	err = b.Replay(rows, p.start, func(tap []board.Replied) error {
		minute := tap[0].Row.Minute
		if minute > glanceAt && p.glance == nil {
			p.glance = before
		}
		if minute > loadAt && p.load == nil {
			p.load = before
		}
		before = b.Picture()
		for _, r := range tap {
			p.replies.Rows = append(p.replies.Rows, replyRow(r))
		}
		s.tap(tap)
		return nil
	})
	p.end = before
	p.told = s.lines
	return p, err
}

// tell prints the story and the lists.
func (c *call) tell(p *played) {
	c.title("Tarpside demo")
	c.lines(hang("", "One night at Sawpit Bridge Road, as it was logged. Everything in it is invented: Quillan County, its rigs and its people. "+
		"It is played in a file of its own; your department file is not touched.")...)
	c.lines(p.told...)
	clock := func(minute int) string { return p.start.Add(time.Duration(minute) * time.Minute).Format("15:04") }
	rig := party(p.end.State.Dept, loadRig)

	c.title(fmt.Sprintf("At a glance, minute %d (%s): staging is handed over", glanceAt, clock(glanceAt)))
	c.lines(glanceLines(p.glance, p.glance.Glance())...)
	c.title(fmt.Sprintf("Load order of %s, minute %d (%s)", rig, loadAt, clock(loadAt)))
	c.lines(loadUpLines(p.load, p.load.LoadUp(loadRig), loadRig)...)
	c.title("Leaving list of " + rig + ", at the end")
	c.lines(leavingLines(p.end, p.end.Leaving(loadRig), loadRig)...)
	c.title("To bring back")
	c.lines(bringBackLines(p.end, p.end.BringBack())...)
	c.title("To restock")
	c.lines(restockLines(p.end, p.end.Restock())...)
	c.title("Every piece is somewhere")
	c.lines(balances(p.end)...)
}

// title prints the head of a part.
func (c *call) title(text string) {
	c.lines("", c.ink(bold, text), c.ink(faint, strings.Repeat("=", len([]rune(text)))))
}

// The inks of a terminal (ECMA-48, select graphic rendition).
const (
	bold  = "1"
	faint = "2"
	red   = "31"
	amber = "33"
)

// ink colours text if it goes to a terminal whose owner does not mind: see
// no-color.org.
func (c *call) ink(how, text string) string {
	if !c.Terminal || c.Getenv("NO_COLOR") != "" || c.Getenv("TERM") == "dumb" {
		return text
	}
	return "\x1b[" + how + "m" + text + "\x1b[0m"
}

// save writes the tables into a folder and returns their names.
func (p *played) save(dir string) ([]string, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	at := p.start.Add(glanceAt * time.Minute)
	var names []string
	for _, t := range []struct {
		name  string
		table board.Table
	}{
		{"replies", p.replies}, {"glance_t60", p.glance.Glance()}, {"checkpoints_t60", p.glance.Checkpoints(at)},
		{"loadup_R41_t125", p.load.LoadUp(loadRig)}, {"leaving_R41", p.end.Leaving(loadRig)}, {"where", p.end.Where()},
		{"bringback", p.end.BringBack()}, {"restock", p.end.Restock()}, {"ready", p.end.Ready()}, {"proof", p.end.Proof()},
		{"conservation", p.end.Conservation()}, {"end_state", p.end.EndState()},
	} {
		f, err := os.Create(filepath.Join(dir, t.name+".csv"))
		if err != nil {
			return nil, err
		}
		if err := errors.Join(t.table.WriteCSV(f), f.Close()); err != nil {
			return nil, err
		}
		names = append(names, t.name+".csv")
	}
	return names, nil
}
