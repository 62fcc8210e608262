package motion

import "strings"

// nearest is the name with the fewest changed letters from word (Levenshtein distance); the first of equals.
func nearest(word string, names []string) string {
	best, fewest := "", -1
	for _, name := range names {
		if d := changes(word, strings.ToLower(name)); fewest < 0 || d < fewest {
			best, fewest = name, d
		}
	}
	return best
}

// changes is the number of letters to insert, drop or replace to turn a into b.
func changes(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			replace := diagonal
			if a[i] != b[j] {
				replace++
			}
			diagonal = row[j+1]
			row[j+1] = min(replace, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
