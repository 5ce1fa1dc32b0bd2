package service

import (
	"mime"
	"net/http"
	"strconv"
	"strings"
)

// accepted refuses whoever takes nothing of the media type that an address answers with; a JSON Schema is JSON, too. Problems are
// told to everybody.
func accepted(r *http.Request, media string) *problem {
	header := strings.Join(r.Header.Values("Accept"), ",")
	if header == "" || takes(header, media) || strings.HasSuffix(media, "+json") && takes(header, "application/json") {
		return nil
	}
	return &problem{Type: "not-acceptable", Title: "The answer is of a media type that is not wanted", Status: http.StatusNotAcceptable,
		Detail: "This address answers with " + media + "."}
}

// takes tells whether a media type is within the ranges of a header Accept (RFC 9110, 12.5.1): the closest range decides.
func takes(header, media string) bool {
	kind, _, _ := strings.Cut(media, "/")
	closest, taken := 0, false
	for _, one := range strings.Split(header, ",") {
		name, parameters, err := mime.ParseMediaType(one)
		if err != nil {
			continue
		}
		quality, err := strconv.ParseFloat(parameters["q"], 64)
		wanted := err != nil || quality > 0
		for i, match := range []string{"*/*", kind + "/*", media} {
			if name == match && i >= closest {
				closest, taken = i, wanted
			}
		}
	}
	return taken
}
