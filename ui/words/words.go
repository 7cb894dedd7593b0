// Package words holds every word that the window shows. The English text is
// the key; a table for each language gives what stands in its place.
package words

import (
	"embed"
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
)

//go:embed base.*.json
var tables embed.FS

// tongue is one language with what was already looked up in it. The toolkit
// parses a text each time it is asked; a refresh asks for hundreds.
type tongue struct {
	change func(string) string // of the table's text; nil leaves it
	seen   sync.Map            // key to text

	mu   sync.Mutex
	once sync.Once
	made formats           // of model and board, read when their first sentence is said
	told map[string]string // their sentences, as they are said
}

var speaks atomic.Pointer[tongue]

// abroad is whether the system's language is one with a table, and not English.
var abroad bool

func init() {
	files, err := tables.ReadDir(".")
	for _, f := range files {
		if err == nil {
			err = load(f.Name(), "")
		}
	}
	here := lang.SystemLocale()
	abroad = own(here) && !strings.HasPrefix(here.LanguageString(), "en")
	if err == nil && !own(here) {
		// A language without a table of ours is given the English one, else the
		// toolkit would mix its own words of that language in.
		err = load("base.en.json", here)
	}
	if err != nil {
		fyne.LogError("The table of words cannot be read", err)
	}
	speaks.Store(&tongue{})
}

// load gives a table to the toolkit: for the language of its name, or for
// another one.
func load(name string, as fyne.Locale) error {
	data, err := tables.ReadFile(name)
	switch {
	case err != nil:
		return err
	case as != "":
		return lang.AddTranslationsForLocale(data, as)
	}
	return lang.AddTranslations(fyne.NewStaticResource(name, data))
}

// own tells whether a table for the language is here.
func own(here fyne.Locale) bool {
	language, _, _ := strings.Cut(here.LanguageString(), "-")
	f, err := tables.Open("base." + language + ".json")
	if err == nil {
		f.Close()
	}
	return err == nil
}

// Pseudo is no language: the English words with accents, and 40 % longer. It
// shows what is not in the table and where a longer language is cut.
const Pseudo = "pseudo"

// Use chooses the language of everything that is asked for from now on: ""
// for that of the system, or Pseudo. Texts that were already shown stay.
func Use(language string) error {
	switch language {
	case "":
		speaks.Store(&tongue{})
	case Pseudo:
		speaks.Store(&tongue{change: pseudo})
	default:
		return fmt.Errorf("there is no language %q; choose %q, or none for that of the system", language, Pseudo)
	}
	return nil
}

// K marks a text of the table that is translated later, where it is shown:
// tables and constants are made before a language is chosen.
func K(text string) string { return text }

// L is a text in the language of the window.
func L(text string) string {
	if text == "" {
		return ""
	}
	t := speaks.Load()
	if s, ok := t.seen.Load(text); ok {
		return s.(string)
	}
	return t.keep(text, lang.L(text))
}

// F is a format in the language of the window, filled in as fmt.Sprintf does.
func F(format string, args ...any) string { return fmt.Sprintf(L(format), args...) }

// N is a format for a number: one where the language says so of n, other else.
// Without args n alone is filled in, if the text has a place for it.
func N(one, other string, n int, args ...any) string {
	t := speaks.Load()
	key := number{other, n}
	s, ok := t.seen.Load(key)
	if !ok {
		s = t.keep(key, lang.N(other, n))
	}
	format := s.(string)
	switch {
	case len(args) > 0:
		return fmt.Sprintf(format, args...)
	case strings.Contains(format, "%"):
		return fmt.Sprintf(format, n)
	}
	return format
}

// number is a text for a number.
type number struct {
	text string
	n    int
}

func (t *tongue) keep(key any, text string) string {
	if t.change != nil {
		text = t.change(text)
	}
	t.seen.Store(key, text)
	return text
}

// Entry is one text of a table. The toolkit reads a list of them; as one
// object the table could have no text such as "Other".
type Entry struct {
	Key         string `json:"id"`
	Description string `json:"description,omitempty"` // Made, where Said looks for it
	One         string `json:"one,omitempty"`         // where the text depends on a number
	Other       string `json:"other"`
}

// English is the table of English by its keys. An error is a fault of the
// table.
func English() (map[string]Entry, error) {
	data, err := tables.ReadFile("base.en.json")
	if err != nil {
		return nil, err
	}
	var list []Entry
	if err := json.Unmarshal(data, &list); err != nil {
		return nil, err
	}
	out := map[string]Entry{}
	for _, e := range list {
		if _, twice := out[e.Key]; twice || e.Key == "" || e.Other == "" {
			return nil, fmt.Errorf("the text %q stands there twice, or is empty", e.Key)
		}
		out[e.Key] = e
	}
	return out, nil
}
