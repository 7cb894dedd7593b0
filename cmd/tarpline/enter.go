package main

import (
	"cmp"
	"fmt"
	"time"

	"tarpside/board/stores"
	"tarpside/model"
)

// enter logs a tarp sheet that was written by hand.
func (c *call) enter() error {
	name, data, err := c.text(c.args[0])
	if err != nil {
		return unread("sheet", c.args[0], err)
	}
	lines, problems := stores.ReadSheet(name, data)
	if len(problems) > 0 {
		return fmt.Errorf("nothing was logged: %s", badRows(problems))
	}
	open := c.write
	if c.dry {
		open = c.look
	}
	b, err := open()
	if err != nil {
		return err
	}
	defer b.Close()
	entries, faults, err := b.EnterPaper(lines, c.by, c.dry)
	if err != nil {
		return err
	}
	if len(faults) > 0 {
		for _, f := range faults {
			problems = append(problems, stores.Problem{File: name, Row: f.Row, Column: f.Column, Wrong: f.Wrong, Right: f.Right})
		}
		return fmt.Errorf("nothing was logged: %s", badRows(problems))
	}
	head := fmt.Sprintf("%d lines from paper are logged:", len(entries))
	if c.dry {
		head = fmt.Sprintf("This would be logged; nothing is. %d lines:", len(entries))
	}
	c.lines(head, "")
	refused := 0
	for _, e := range entries {
		at := time.UnixMilli(e.At()).In(c.Now().Location()).Format("15:04")
		c.lines(hang(fmt.Sprintf("%s  %-9s  ", at, e.Reply.Word), cmp.Or(e.Reply.Text, "as the log has it"))...)
		if e.Reply.Word == model.Refused {
			refused++
		}
	}
	if refused > 0 {
		c.lines("", "Refused lines moved nothing; they are kept as they were written.")
	}
	return nil
}
