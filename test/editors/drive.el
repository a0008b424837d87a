;;; drive.el --- Opens a script in Emacs as drive.lua does in Neovim  -*- lexical-binding: t -*-
;;; Commentary:
;; Environment: SCRIPT, WORD, ANSWER (the file to write).
;;; Code:
(require 'flymake)
(require 'json)

(find-file (getenv "SCRIPT"))
;; A person's next key does this; there is none here.
(run-hooks 'post-command-hook)

(let ((end (+ (float-time) 20)))
  (while (and (null (flymake-diagnostics)) (< (float-time) end))
    (accept-process-output nil 0.05)
    (run-hooks 'post-command-hook)))

(goto-char (point-min))
(search-forward (getenv "WORD"))
(backward-char)
(let* ((answer (jsonrpc-request (eglot-current-server) :textDocument/hover
                                (eglot--TextDocumentPositionParams)))
       (findings (mapcar (lambda (one)
                           `((line . ,(line-number-at-pos (flymake-diagnostic-beg one)))
                             (message . ,(flymake-diagnostic-text one))))
                         (flymake-diagnostics)))
       (told (json-encode `((findings . ,(vconcat findings))
                            (hover . ,(plist-get (plist-get answer :contents) :value))))))
  (with-temp-file (getenv "ANSWER") (insert told)))
(kill-emacs 0)
;;; drive.el ends here
