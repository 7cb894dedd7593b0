package stick

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"iter"
	"strings"
	"testing"

	"tarpside/model"
	"tarpside/model/modeltest"
)

func all(entries []model.Entry) iter.Seq2[model.Entry, error] {
	return func(yield func(model.Entry, error) bool) {
		for _, e := range entries {
			if !yield(e, nil) {
				return
			}
		}
	}
}

// aLog is a random log with notes in it.
func aLog(seed uint64) []model.Entry {
	r := modeltest.Rand(seed)
	l := modeltest.New("A", modeltest.Department(r))
	l.Open("S")
	for range 30 {
		e := modeltest.Entry(r, l, "A", "B")
		e.Note = fmt.Sprintf("note %d\n\"é雪\"", r.IntN(9))
		l.Do(e)
	}
	return l.Entries
}

func written(t testing.TB, entries []model.Entry) []byte {
	t.Helper()
	var b bytes.Buffer
	n, err := Write(&b, "A", all(entries))
	if err != nil || n != len(entries) {
		t.Fatalf("%d written, %v", n, err)
	}
	return b.Bytes()
}

func taken(data []byte) (entries []model.Entry, err error) {
	_, err = Read(bytes.NewReader(data), func(e model.Entry) error {
		entries = append(entries, e)
		return nil
	})
	return entries, err
}

func TestWhatWasWrittenIsReadWithEveryNote(t *testing.T) {
	for seed := range uint64(20) {
		want := aLog(seed)
		data := written(t, want)
		got, err := taken(data)
		if err != nil {
			t.Fatal(err)
		}
		// Through JSON once, an empty list and none are one.
		if a, b := text(t, want), text(t, got); a != b {
			t.Fatalf("seed %d: it changed on the way\n%s\n%s", seed, a, b)
		}
		if !bytes.Equal(data, written(t, got)) {
			t.Fatalf("seed %d: written again it is another file", seed)
		}
		if a, b := modeltest.Picture(model.Fold(want)), modeltest.Picture(model.Fold(got)); a != b {
			t.Fatalf("seed %d: another picture", seed)
		}
	}
	if got, err := taken(written(t, nil)); err != nil || len(got) != 0 {
		t.Errorf("an empty log: %d, %v", len(got), err)
	}
}

func text(t *testing.T, entries []model.Entry) string {
	t.Helper()
	var out strings.Builder
	for _, e := range entries {
		b, err := json.Marshal(e)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&out, "%s %q\n", b, e.Note)
	}
	return out.String()
}

func TestOneByteThatChangedOrIsMissingIsSeen(t *testing.T) {
	entries := aLog(1)
	data, whole := written(t, entries), text(t, entries)
	for i := range data {
		bad := bytes.Clone(data)
		bad[i] ^= 0x10
		// A bit of gzip's own, such as its time or its padding, may change unseen.
		if got, err := taken(bad); err == nil && text(t, got) != whole {
			t.Fatalf("byte %d was changed, and %d entries were taken", i, len(got))
		}
		if _, err := taken(data[:i]); err == nil {
			t.Fatalf("cut off at byte %d it was taken", i)
		}
	}
	if _, err := taken(append(bytes.Clone(data), 0)); !errors.Is(err, ErrDamaged) {
		t.Errorf("with something behind it: %v", err)
	}
}

// packed makes a file of lines, with a tail that fits unless they bring one.
func packed(lines ...string) []byte {
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	sum := sha256.New()
	for _, l := range lines {
		fmt.Fprintln(io.MultiWriter(z, sum), l)
	}
	if len(lines) == 0 || !strings.Contains(lines[len(lines)-1], "sha256") {
		fmt.Fprintf(z, `{"entries":%d,"sha256":"%s"}`+"\n", len(lines)-1, hex.EncodeToString(sum.Sum(nil)))
	}
	z.Close()
	return b.Bytes()
}

func TestForeignDamagedAndNewerFilesAreToldApart(t *testing.T) {
	const first = `{"tarpside":"log","format":1,"device":"A"}`
	const good = `{"entry":{"id":"017f22e2-79b0-7cc3-98c4-dc0c0c07398f","stamp":{"w":5,"d":"A"},"format":1,"verb":"note","quantity":-1,"reply":{"word":"ok"}}}`
	for name, c := range map[string]struct {
		data []byte
		want error
	}{
		"good":                   {packed(first, good), nil},
		"nothing":                {nil, ErrForeign},
		"a table":                {[]byte("rig,name\nR41,Rescue 41\n"), ErrForeign},
		"another gzip":           {packed("hello"), ErrForeign},
		"JSON of another":        {packed(`{"version":1}`), ErrForeign},
		"a newer file":           {packed(`{"tarpside":"log","format":2}`, good), ErrNewer},
		"a newer entry":          {packed(first, strings.Replace(good, `"format":1`, `"format":2`, 1)), ErrNewer},
		"no JSON":                {packed(first, "{"), ErrDamaged},
		"an entry without id":    {packed(first, strings.Replace(good, "017f22e2-79b0-7cc3-98c4-dc0c0c07398f", "00000000-0000-0000-0000-000000000000", 1)), ErrDamaged},
		"an entry of no tablet":  {packed(first, strings.Replace(good, `"d":"A"`, `"d":""`, 1)), ErrDamaged},
		"an entry before number": {packed(first, strings.Replace(good, `"format":1`, `"seen":{"A":-3},"format":1`, 1)), ErrDamaged},
		"too few entries":        {packed(first, good, `{"entries":2,"sha256":""}`), ErrDamaged},
		"a wrong sum":            {packed(first, good, `{"entries":1,"sha256":"00"}`), ErrDamaged},
		"no tail":                {packed(first, good, good+` `, `{"sha256":1}`), ErrDamaged},
	} {
		if _, err := taken(c.data); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
}

// FuzzRead: whatever the lines, reading ends without a panic; what is taken
// can be folded, and written and read again.
func FuzzRead(f *testing.F) {
	for seed := range uint64(3) {
		var b bytes.Buffer
		for _, e := range aLog(seed) {
			l, _ := json.Marshal(line{e, e.Note})
			fmt.Fprintf(&b, "%s\n", l)
		}
		f.Add(b.Bytes())
	}
	f.Add([]byte(`{"entry":{"id":"017f22e2-79b0-7cc3-98c4-dc0c0c07398f","stamp":{"w":5,"d":"A"},"format":1,"verb":"pull","quantity":-1,"reply":{"word":"ok"},"moves":[{"item":"x","n":-1}]}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		if _, err := taken(data); err == nil {
			t.Fatal("raw lines were taken for a file")
		}
		entries, err := taken(packed(append([]string{`{"tarpside":"log","format":1,"device":"A"}`}, strings.Split(string(data), "\n")...)...))
		if err != nil {
			return
		}
		model.Fold(entries)
		again, err := taken(written(t, entries))
		if err != nil || len(again) != len(entries) {
			t.Fatalf("%d of %d, %v", len(again), len(entries), err)
		}
	})
}
