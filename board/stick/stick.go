// Package stick is the file in which a log goes from one tablet to another by
// stick or cable: a gzip stream of lines, each one JSON value.
//
//	{"tarpside":"log","format":1,"device":"t-4k2m"}     who wrote it
//	{"entry":{...},"note":"..."}                         one line an entry
//	{"entries":1234,"sha256":"..."}                      how many, and the
//	                                                     SHA-256 of all lines before
//
// It is read from end to end before anything of it counts.
package stick

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"hash"
	"io"
	"iter"

	"github.com/google/uuid"

	"tarpside/model"
)

// format is the version of the file.
const format = 1

// Ext is how the files' names end.
const Ext = ".tarpside"

// What a file that is not taken is.
var (
	ErrForeign = errors.New("it is no log of this program")
	ErrDamaged = errors.New("it is damaged")
	ErrNewer   = errors.New("it was written by a newer version of this program")
)

// What one line and a whole file may hold, unpacked.
const (
	mostLine = 64 << 20
	mostFile = 4 << 30
)

type head struct {
	Tarpside string `json:"tarpside"`
	Format   int    `json:"format"`
	Device   string `json:"device"`
}

type line struct {
	Entry model.Entry `json:"entry"`
	Note  string      `json:"note,omitempty"`
}

type tail struct {
	Entries int    `json:"entries"`
	SHA256  string `json:"sha256"`
}

// Write writes entries as a file of the device and returns how many there
// were. The same entries make the same bytes.
func Write(w io.Writer, device string, entries iter.Seq2[model.Entry, error]) (n int, err error) {
	z := gzip.NewWriter(w)
	sum := sha256.New()
	out := json.NewEncoder(io.MultiWriter(z, sum))
	if err := out.Encode(head{"log", format, device}); err != nil {
		return 0, err
	}
	for e, err := range entries {
		if err == nil {
			err = out.Encode(line{e, e.Note})
		}
		if err != nil {
			return n, err
		}
		n++
	}
	if err := json.NewEncoder(z).Encode(tail{n, hex.EncodeToString(sum.Sum(nil))}); err != nil {
		return n, err
	}
	return n, z.Close()
}

// Read reads a file from end to end, calls each with every entry as it comes,
// and returns the device that wrote it. Only when it returns no error was the
// file whole: nothing that each was given may count before. Errors are
// ErrForeign, ErrDamaged, ErrNewer or what each returned.
func Read(r io.Reader, each func(model.Entry) error) (device string, err error) {
	in := bufio.NewReader(r)
	z, err := gzip.NewReader(in)
	if err != nil {
		return "", ErrForeign
	}
	z.Multistream(false)
	f := &reader{in: bufio.NewReaderSize(io.LimitReader(z, mostFile), 1<<16), sum: sha256.New()}
	var h head
	if first, err := f.next(); err != nil || json.Unmarshal(first, &h) != nil || h.Tarpside != "log" {
		return "", ErrForeign
	}
	if h.Format > format {
		return "", ErrNewer
	}
	if h.Format < 1 {
		return "", ErrDamaged
	}
	if err := f.entries(each); err != nil {
		return "", err
	}
	if _, err := f.in.ReadByte(); err != io.EOF { // gzip checks its own sum there
		return "", ErrDamaged
	}
	if _, err := in.ReadByte(); err != io.EOF {
		return "", ErrDamaged
	}
	return h.Device, nil
}

// A reader reads lines and keeps their sum.
type reader struct {
	in  *bufio.Reader
	sum hash.Hash
	buf []byte
}

// next is the next line, which is valid until the one after.
func (f *reader) next() ([]byte, error) {
	f.buf = f.buf[:0]
	for {
		part, err := f.in.ReadSlice('\n')
		f.buf = append(f.buf, part...)
		switch {
		case len(f.buf) > mostLine:
			return nil, ErrDamaged
		case err == nil:
			f.sum.Write(f.buf)
			return f.buf, nil
		case !errors.Is(err, bufio.ErrBufferFull):
			return nil, ErrDamaged
		}
	}
}

// entries reads the entries and the tail behind them.
func (f *reader) entries(each func(model.Entry) error) error {
	for n := 0; ; n++ {
		before := f.sum.Sum(nil)
		text, err := f.next()
		if err != nil {
			return err
		}
		if bytes.HasPrefix(text, []byte(`{"entries":`)) {
			var t tail
			if json.Unmarshal(text, &t) != nil || t.Entries != n || t.SHA256 != hex.EncodeToString(before) {
				return ErrDamaged
			}
			return nil
		}
		var l line
		if json.Unmarshal(text, &l) != nil {
			return ErrDamaged
		}
		if err := sound(&l.Entry); err != nil {
			return err
		}
		l.Entry.Device, l.Entry.Note = l.Entry.Stamp.Device, l.Note
		if err := each(l.Entry); err != nil {
			return err
		}
	}
}

// lastDay is the end of the year 9999, Unix milliseconds.
const lastDay = 253402300799999

// sound tells whether an entry can be one of a log.
func sound(e *model.Entry) error {
	switch {
	case e.Format > model.Format:
		return ErrNewer
	case e.ID == uuid.Nil, e.Stamp.Device == "", e.Format < 1, e.Stamp.Wall <= 0, e.Stamp.Wall > lastDay, e.Stamp.Count < 0, e.N() < 1:
		return fmt.Errorf("%w: an entry without its place in the log", ErrDamaged)
	}
	for _, n := range e.Seen {
		if n < 0 {
			return fmt.Errorf("%w: an entry without its place in the log", ErrDamaged)
		}
	}
	return nil
}
