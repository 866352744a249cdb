package timeline

import (
	"strconv"
	"strings"
	"unicode"

	"gloamline/journal"
)

// initials returns a short mark for each person, none equal to another on the
// list, letters compared without case: the person's own initials, else the first
// letter, else as many letters as tell them apart (An, Al), else the first
// letters of all words, else a letter with a number.
func initials(people []journal.Person) []string {
	ladders := make([][]string, len(people))
	for i, p := range people {
		ladders[i] = marks(p)
	}
	step := make([]int, len(people))
	mark := func(i int) string {
		if step[i] < len(ladders[i]) {
			return ladders[i][step[i]]
		}
		return ladders[i][0] + strconv.Itoa(i+1+len(people)*(step[i]-len(ladders[i])))
	}
	for {
		holders := map[string][]int{}
		for i := range people {
			k := strings.ToLower(mark(i))
			holders[k] = append(holders[k], i)
		}
		if len(holders) == len(people) {
			break
		}
		for _, same := range holders {
			if len(same) > 1 {
				for _, i := range same {
					step[i]++
				}
			}
		}
	}
	out := make([]string, len(people))
	for i := range people {
		out[i] = mark(i)
	}
	return out
}

// marks lists what may stand for one person, the shortest first.
func marks(p journal.Person) []string {
	var out []string
	if own := strings.TrimSpace(p.Initials); own != "" {
		out = append(out, own)
	}
	words := strings.FieldsFunc(p.Name, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' })
	if len(words) == 0 {
		return append(out, "R")
	}
	first := []rune(words[0])
	for n := 1; n <= min(3, len(first)); n++ {
		out = append(out, string(unicode.ToUpper(first[0]))+string(first[1:n]))
	}
	if len(words) > 1 {
		all := ""
		for _, w := range words {
			all += string(unicode.ToUpper([]rune(w)[0]))
		}
		out = append(out, all)
	}
	return out
}
