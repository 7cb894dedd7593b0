package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"tarpside/board"
	"tarpside/board/stores"
	"tarpside/model"
)

func (c *call) replay() error {
	rows, err := c.scene(c.args[0])
	if err != nil {
		return err
	}
	if c.given["until"] {
		n := 0
		for n < len(rows) && rows[n].Minute <= c.until {
			n++
		}
		rows = rows[:n]
	}
	start, err := c.minute0(rows)
	if err != nil {
		return err
	}
	b, err := c.write()
	if err != nil {
		return err
	}
	defer b.Close()
	if len(b.Picture().State.Dept.Items) == 0 {
		return errors.New("there is no inventory in this department file yet, so no row would find its piece. Nothing was logged. First: tarpline stores load DIR")
	}
	out, err := c.openReplies()
	if err != nil {
		return err
	}
	counts := map[model.Word]int{}
	err = b.Replay(rows, start, func(done []board.Replied) error {
		for _, d := range done {
			counts[d.Entry.Reply.Word]++
		}
		return out.write(done)
	})
	if err := errors.Join(err, out.close()); err != nil {
		n := 0
		for _, k := range counts {
			n += k
		}
		return fmt.Errorf("stopped after %d of %d rows; those are safe in the log: %w", n, len(rows), err)
	}
	said := fmt.Sprintf("%d rows logged: %d ok, %d warned, %d refused, %d contested.", len(rows),
		counts[model.OK], counts[model.Warned], counts[model.Refused], counts[model.Contested])
	if c.replies == "-" { // the screen has the table, for a script to read
		fmt.Fprintln(c.Stderr, "tarpline: "+said)
		return nil
	}
	c.lines(said)
	return nil
}

// scene reads a scene file whole, so that a mistake stops before the first row.
func (c *call) scene(name string) ([]stores.SceneRow, error) {
	called, data, err := c.text(name)
	if err != nil {
		return nil, unread("scene", name, err)
	}
	rows, problems := stores.ReadScene(called, data)
	if len(problems) > 0 {
		return nil, fmt.Errorf("nothing was logged: %s", badRows(problems))
	}
	return rows, nil
}

// text is what is in a file, or with - what comes in, and what it is called.
func (c *call) text(name string) (string, []byte, error) {
	if name == "-" {
		data, err := io.ReadAll(c.Stdin)
		return "standard input", data, err
	}
	data, err := os.ReadFile(name)
	return filepath.Base(name), data, err
}

// unread says in words that a file could not be read.
func unread(what, name string, err error) error {
	const safe = "Nothing was logged; what was logged before is safe"
	if errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("there is no file %s. %s. Check its name, and that the folder or the stick that it lies on is there", name, safe)
	}
	return fmt.Errorf("the %s could not be read: %w. %s. Check that %s is a file, and that you may read it", what, err, safe, name)
}

// minute0 is the moment of minute 0: as given; or by the clock of the first
// row, on the last day on which all rows lie in the past; or such that the
// last row is now.
func (c *call) minute0(rows []stores.SceneRow) (time.Time, error) {
	if c.start != "" {
		t, err := board.ParseTime(c.start)
		if err != nil {
			return t, misuse("-start: " + err.Error())
		}
		return t, nil
	}
	now := c.Now()
	if len(rows) == 0 {
		return now, nil
	}
	last := time.Duration(rows[len(rows)-1].Minute) * time.Minute
	clock, err := time.Parse("15:04", rows[0].Clock)
	if err != nil {
		return now.Add(-last), nil
	}
	y, m, d := now.Date()
	start := time.Date(y, m, d, clock.Hour(), clock.Minute()-rows[0].Minute, 0, 0, now.Location())
	for start.Add(last).After(now) {
		start = start.AddDate(0, 0, -1)
	}
	return start, nil
}

// replies is where the reply to each row goes; it may be nowhere.
type replies struct {
	csv  *csv.Writer
	file *os.File
}

func (c *call) openReplies() (*replies, error) {
	r := &replies{}
	switch c.replies {
	case "":
		return r, nil
	case "-":
		r.csv = csv.NewWriter(c.Stdout)
	default:
		f, err := os.Create(c.replies)
		if err != nil {
			return nil, fmt.Errorf("the replies cannot be written: %w. Nothing was logged", err)
		}
		r.file, r.csv = f, csv.NewWriter(f)
	}
	return r, r.put([]string{"seq", "reply", "reasons", "text"})
}

// write puts out the replies of a tap that is safe on disk, before anything
// more is logged.
func (r *replies) write(done []board.Replied) error {
	if r.csv == nil {
		return nil
	}
	rows := make([][]string, len(done))
	for i, d := range done {
		rows[i] = replyRow(d)
	}
	return r.put(rows...)
}

func replyRow(d board.Replied) []string {
	reply := d.Entry.Reply
	return []string{strconv.Itoa(d.Row.Seq), string(reply.Word), strings.Join(reply.Reasons, ";"), reply.Text}
}

func (r *replies) put(rows ...[]string) error {
	if err := r.csv.WriteAll(rows); err != nil { // WriteAll flushes
		return fmt.Errorf("the replies could not be written: %w", err)
	}
	return nil
}

func (r *replies) close() error {
	if r.file == nil {
		return nil
	}
	return r.file.Close()
}
