package main

import (
	"fmt"
	"os"
	"path/filepath"

	"tarpside/board"
)

// journal writes the whole log for bookkeeping programs.
func (c *call) journal() error {
	b, err := c.look()
	if err != nil {
		return err
	}
	defer b.Close()
	return b.Journal(c.out, c.Now().Location())
}

func (c *call) verify() error {
	b, err := c.look()
	if err != nil {
		return err
	}
	defer b.Close()
	found, err := b.Verify()
	t := board.Table{Name: "verify", Columns: []string{"ok", "what"}}
	wrong := 0
	for _, f := range found {
		word := "yes"
		if !f.OK {
			word = "no"
			wrong++
		}
		t.Rows = append(t.Rows, []string{word, f.Words})
	}
	if c.csv {
		if err := t.WriteCSV(c.out); err != nil {
			return err
		}
	} else {
		for _, row := range t.Rows {
			mark := "ok     "
			if row[0] == "no" {
				mark = "WRONG  "
			}
			c.lines(hang(mark, row[1])...)
		}
	}
	if err != nil {
		return err
	}
	if wrong > 0 {
		return fmt.Errorf("%d of %d things are wrong. Nothing was changed. Keep the file as it is and restore the newest backup under another name", wrong, len(found))
	}
	return nil
}

func (c *call) backup() error {
	b, err := c.look()
	if err != nil {
		return err
	}
	defer b.Close()
	if err := b.Backup(c.args[0]); err != nil {
		return err
	}
	c.lines(fmt.Sprintf("The copy is %s. It was checked, and can be opened and restored.", c.args[0]))
	return nil
}

func (c *call) restore() error {
	path, err := c.file()
	if err != nil {
		return err
	}
	if !c.given["db"] {
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			return fmt.Errorf("your data folder cannot be used: %w. Nothing was restored; name a file with -db", err)
		}
	}
	aside, err := board.Restore(c.args[0], path, c.replace, c.options(false))
	if err != nil {
		return err
	}
	c.lines(fmt.Sprintf("%s is now as %s was.", path, c.args[0]))
	if aside != "" {
		c.lines(fmt.Sprintf("What was there before is kept as %s.", aside))
	}
	return nil
}

// lines prints lines for people.
func (c *call) lines(lines ...string) {
	for _, l := range lines {
		c.out.WriteString(l + "\n")
	}
}
