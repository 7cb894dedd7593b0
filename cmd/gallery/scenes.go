package main

import (
	"crypto/rand"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"tarpside/board"
	"tarpside/board/ledger"
	"tarpside/board/stores"
	"tarpside/model"
)

// The files that moments are shown on, next to the demo's: each is made for
// real, in a folder of its own that goes away with the run.
const (
	fileDemo  = ""
	fileEmpty = "empty"     // a department file with nothing in it
	fileRead  = "read only" // the demo's, held open by another program
	fileLong  = "long"      // the demo's with names as long as people write them
	fileMany  = "many"      // 2,000 lines, 400 of them on the tarp
)

// scenes makes the files and keeps them, so that each is replayed only once.
type scenes struct {
	dir   string
	start time.Time
	made  map[string]string // path by kind and minute
	n     int
}

func newScenes() (*scenes, error) {
	dir, err := os.MkdirTemp("", "gallery-")
	if err != nil {
		return nil, err
	}
	return &scenes{dir: dir, start: board.DemoStart(time.Date(2026, 3, 14, 12, 0, 0, 0, time.UTC)), made: map[string]string{}}, nil
}

func (s *scenes) remove() { os.RemoveAll(s.dir) }

// fresh is a copy of a moment's file that nobody else writes.
func (s *scenes) fresh(m moment, opts board.Options) (string, error) {
	s.n++
	path := filepath.Join(s.dir, fmt.Sprintf("%d.db", s.n))
	if m.data == fileEmpty {
		return path, nil
	}
	key := fmt.Sprint(m.data, m.minute)
	if s.made[key] == "" {
		master := filepath.Join(s.dir, fmt.Sprintf("master-%d.db", s.n))
		if err := s.master(m, master, opts); err != nil {
			return "", err
		}
		s.made[key] = master
	}
	return path, copyFile(s.made[key], path)
}

func (s *scenes) master(m moment, path string, opts board.Options) error {
	b, err := board.OpenDemo(path, s.start, m.minute, opts)
	if err != nil {
		return err
	}
	switch m.data {
	case fileLong:
		err = s.reload(b, lengthen)
	case fileMany:
		if err = s.reload(b, multiply); err == nil {
			err = stageMany(b)
		}
	}
	if closed := b.Close(); err == nil {
		err = closed
	}
	return err
}

// reload writes the tables out, changed, and loads them as anybody would.
func (s *scenes) reload(b *board.Board, change func(*model.Department)) error {
	dir := filepath.Join(s.dir, fmt.Sprintf("tables-%d", s.n))
	if err := b.SaveStores(dir); err != nil {
		return err
	}
	d, problems := stores.Read(os.DirFS(dir))
	if err := problems.Err(); err != nil {
		return err
	}
	change(d)
	if err := stores.Write(dir, d); err != nil {
		return err
	}
	_, err := b.LoadStores(os.DirFS(dir), "", false)
	return err
}

// lengthen gives everything the longest name that somebody might write.
func lengthen(d *model.Department) {
	for i := range d.Items {
		it := &d.Items[i]
		it.Name = strings.Replace(it.Name, " ", " with carrying strap, ", 1) + ", second of two, northern station"
		if len(it.ShortName) == 0 {
			it.ShortName = (d.Items[i].Family + " telescopic wide")[:14] + " " + it.ID[len(it.ID)-3:]
		}
	}
	for i := range d.Rigs {
		d.Rigs[i].Name += " Heavy and Technical Rescue, North"
	}
	for i := range d.Agencies {
		d.Agencies[i].Name += ", Northern Division Night Crew"
	}
	for i := range d.Members {
		d.Members[i].Name = strings.Replace(d.Members[i].Name, " ", " Maximiliana Featherstonehaugh-", 1)
		d.Members[i].Role = "Rescue technician and " + strings.ToLower(d.Members[i].Role)
	}
	for i := range d.Places {
		d.Places[i].Meaning += ", below the second bridge"
	}
}

// lines is how many lines the large department has.
const lines = 2000

// multiply adds reserve lines to the slots of the first rig, up to 2,000.
func multiply(d *model.Department) {
	for n := len(d.Items); n < lines; n++ {
		like := d.Items[n%180]
		d.Items = append(d.Items, model.Item{ID: fmt.Sprintf("R41-X%04d", n), Name: fmt.Sprintf("%s, reserve %d", like.Name, n),
			ShortName: fmt.Sprintf("Reserve %d", n), Rig: "R41", Slot: like.Slot, Kind: model.Piece, Quantity: 1, Unit: "ea",
			WeightLb: like.WeightLb, LeastUsable: model.Blank, Order: n})
		if it := &d.Items[n]; d.Slot(it.Slot) == nil || d.Slot(it.Slot).Rig != "R41" {
			it.Slot = d.Items[0].Slot
		}
	}
}

// stageMany puts every fourth of the reserve on the tarp, in taps of twenty.
func stageMany(b *board.Board) error {
	d := b.Picture().State.Dept
	var acts []model.Act
	for i := range d.Items {
		if id := d.Items[i].ID; strings.HasPrefix(id, "R41-X") && i%4 == 0 {
			acts = append(acts, model.Act{Verb: model.PullOff, Item: id, Quantity: 1, From: string(model.Home), To: string(model.Tarp)})
		}
	}
	for len(acts) > 0 {
		k := min(20, len(acts))
		if _, err := b.Log(board.Tap{Acts: acts[:k]}); err != nil {
			return err
		}
		acts = acts[k:]
	}
	return nil
}

// options are the board's, with a clock at the moment.
func (s *scenes) options(m moment) board.Options {
	now := s.now(m)
	o := board.Options{Now: now, Random: rand.Reader, Device: "A"}
	if m.data == fileRead {
		o.Ledger = ledger.Options{ReadOnly: true}
	}
	return o
}

func (s *scenes) now(m moment) func() time.Time {
	at := s.start.Add(time.Duration(max(m.minute, 0)+m.late) * time.Minute)
	return func() time.Time { return at }
}

func copyFile(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.Create(to)
	if err != nil {
		return err
	}
	if _, err := io.Copy(out, in); err != nil {
		out.Close()
		return err
	}
	return out.Close()
}
