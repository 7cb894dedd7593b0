package ui

import (
	"path/filepath"
	"strings"

	"tarpside/board"
	"tarpside/board/stick"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// stickScreen moves the log as one file: write it into a folder, or choose a
// file and take it in.
type stickScreen struct {
	sh     *Shell
	folder Folder
	chosen string // the file to take in
	says   string
	list   *rowList
}

func newStick(sh *Shell) *stickScreen {
	s := &stickScreen{sh: sh}
	s.list = newRowList(words.L("By stick"), words.L("Write the log to a stick, or take in another tablet's"), s.rows, s.aside)
	s.enter("")
	return s
}

func (s *stickScreen) enter(dir string) {
	f, err := s.sh.opts.Folders(dir)
	if s.chosen = ""; err != nil {
		s.says = words.F("That folder cannot be read: %s. Nothing was changed; choose another one.", words.Said(err.Error()))
		return
	}
	s.folder, s.says = f, ""
}

func (s *stickScreen) rows(n *now) []rowDo {
	var out []rowDo
	if s.chosen != "" {
		out = append(out, rowDo{parts.RowView{ID: "take-in", Title: words.F("Yes, take in %s", filepath.Base(s.chosen)), Second: words.L("what was taken in stays in the log"), Icon: "in", Tone: parts.Live, Off: n.pic.ReadOnly != ""}, s.take},
			rowDo{parts.RowView{ID: "drop", Title: words.L("No, not this file"), Second: words.L("nothing is taken in"), Icon: "cross", Tone: parts.Quiet}, func() { s.chosen = ""; s.sh.refresh() }})
	} else {
		out = append(out, rowDo{parts.RowView{ID: "write-stick", Title: words.L("Write the log into this folder"), Second: s.folder.Path, Icon: "with", Tone: parts.Live}, s.write})
	}
	if s.folder.Up != "" {
		up := s.folder.Up
		out = append(out, rowDo{parts.RowView{ID: "up", Title: words.L("Up"), Second: words.F("out of %s", filepath.Base(s.folder.Path)), Icon: "up", Tone: parts.Quiet}, func() { s.enter(up); s.sh.refresh() }})
	}
	for _, file := range s.folder.Sticks {
		v := parts.RowView{ID: "stick-" + filepath.Base(file), Title: filepath.Base(file), Second: words.L("a log, to be taken in"), Icon: "paper", Tone: parts.Live}
		if file == s.chosen {
			v.Right, v.State = words.L("chosen"), "chosen"
		}
		out = append(out, rowDo{v, func() { s.chosen, s.says = file, ""; s.sh.refresh() }})
	}
	for _, dir := range s.folder.Inside {
		if board.IsWorkbook(dir) { // a folder of tables, and no place for a log
			continue
		}
		out = append(out, rowDo{parts.RowView{ID: "folder-" + filepath.Base(dir), Title: filepath.Base(dir), Tone: parts.Quiet, Go: "go"}, func() { s.enter(dir); s.sh.refresh() }})
	}
	return out
}

func (s *stickScreen) aside(*now) (title, text string) {
	if s.says != "" {
		return words.L("What came of it"), s.says
	}
	return words.L("How two tablets agree"), words.L("Write the log of each onto the stick, and take it in on the other. Afterwards both show the same.\n\n" +
		"A file is taken in whole or not at all. The same file again changes nothing. A file of another department is refused.")
}

// write writes the log under a name that says which tablet and when.
func (s *stickScreen) write() {
	n := s.sh.now()
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, n.pic.Device)
	path := filepath.Join(s.folder.Path, name+n.at.Format("-20060102-1504")+stick.Ext)
	count, err := n.opts.Board.WriteStick(path)
	s.enter(s.folder.Path)
	if s.says = words.F("All %d entries are written.\n\nThe file is %s\n\nTake the stick out as this system asks, before you pull it.", count, path); err != nil {
		s.says = inWordsLong(err)
	}
	s.sh.refresh()
}

// take takes the chosen file in.
func (s *stickScreen) take() {
	got, err := s.sh.opts.Board.TakeStick(s.chosen)
	s.chosen, s.says = "", stickWords(got)
	if err != nil {
		s.says = inWordsLong(err)
	}
	s.sh.catchUp()
	s.sh.refresh()
}

// stickWords say what came of taking a file in.
func stickWords(t board.StickTaken) string {
	out := words.F("%d of its %d entries were new here; it was written by %s.", t.New, t.Entries, t.From)
	if t.New == 0 {
		out = words.F("All of its %d entries were here already; it was written by %s. Nothing was changed.", t.Entries, t.From)
	}
	if t.Waiting > 0 {
		out += "\n\n" + words.F("%d entries wait for earlier ones of their tablet, and count once these come.", t.Waiting)
	}
	return out
}

// inWordsLong is an error as three sentences.
func inWordsLong(err error) string {
	t := inWords(err)
	out := parts.B(t.What) + " " + t.Safe + " " + t.Do
	if t.Err != nil {
		out += "\n\n(" + words.Said(t.Err.Error()) + ")"
	}
	return out
}
