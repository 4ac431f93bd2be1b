;;; emacs.el --- Uses Platewright in Emacs, as the page about other editors sets it up  -*- lexical-binding: t -*-
;; PAGE is the whelk, WORDS and COLOURS are the table of colours and its page.
;;   emacs --batch --load ~/.emacs.d/init.el --load tests/editor/emacs.el
(require 'eglot)
(require 'flymake)

(defvar passed 0)
(defun end (failed)
  (princ (format "%d passed, %d failed\n" passed failed))
  (kill-emacs (min failed 1)))
(defmacro step (name &rest body)
  `(condition-case problem
       (progn ,@body (setq passed (1+ passed)) (princ (format "  passed  %s\n" ,name)))
     (error (princ (format "  FAILED  %s\n%S\n" ,name problem)) (end 1))))
(defun wait (what look)
  (let ((until (+ (float-time) 20)))
    (while (not (funcall look))
      (when (> (float-time) until) (error "not within 20 s: %s" what))
      (accept-process-output nil 0.05))))

(step "words have their colours, and a torn line colours no other"
  (find-file-read-only (getenv "COLOURS"))
  (cl-assert (eq major-mode 'plate-mode))
  (font-lock-ensure)
  (let ((faces '(("note" . font-lock-doc-face) ("comment" . font-lock-comment-face) ("text" . font-lock-string-face) ("fact" . font-lock-variable-name-face) ("kind" . font-lock-type-face) ("statement" . font-lock-keyword-face)
                 ("function" . font-lock-function-name-face) ("clause" . font-lock-builtin-face) ("unit" . font-lock-type-face) ("number" . font-lock-constant-face) ("asked" . font-lock-warning-face) ("name")))
        (rows (with-temp-buffer (insert-file-contents (getenv "WORDS")) (split-string (buffer-string) "\n" t)))
        wrong)
    (dolist (row rows)
      (pcase-let ((`(,line ,word ,wanted) (split-string row)))
        (goto-char (point-min))
        (forward-line (1- (string-to-number line)))
        (re-search-forward (concat "\\(?:^\\|[^[:alnum:].-]-?\\|[0-9] ?\\)\\(" (regexp-quote word) "\\)") (line-end-position))
        (let ((is (get-text-property (match-beginning 1) 'face)))
          (unless (eq is (cdr (assoc wanted faces))) (push (list row is) wrong)))))
    (when wrong (error "%S" wrong))))

(find-file (getenv "PAGE"))
(defvar original (buffer-string))
(defun mismatch ()
  (seq-find (lambda (found) (string-match-p "\\b84 mm\\b" (flymake-diagnostic-text found))) (flymake-diagnostics)))
(defun ask (method &rest more)
  (jsonrpc-request (eglot-current-server) method (append (list :textDocument (list :uri (concat "file://" (file-truename (buffer-file-name))))) more)))

(step "opening a page starts the server"
  ;; What is done behind the first key.
  (run-hooks 'post-command-hook)
  (wait "connected" #'eglot-current-server)
  (cl-assert (eglot-managed-p)))

(step "the object arm is 84 mm too long"
  (flymake-start)
  (wait "a finding of 84 mm" #'mismatch))

(step "hovering over a kind tells its facts"
  (goto-char (point-min))
  (re-search-forward "^ *laser")
  (let ((said (plist-get (ask :textDocument/hover :position (list :line (1- (line-number-at-pos)) :character (1- (current-column)))) :contents)))
    (cl-assert (string-match-p "tube length" (plist-get said :value)))))

(step "a fix matches the arms, in one line"
  (goto-char (flymake-diagnostic-beg (mismatch)))
  ;; As chosen by a key, not from a menu of the mouse.
  (cl-letf ((last-nonmenu-event ?a)
            ((symbol-function 'completing-read) (lambda (_ offered &rest _) (seq-find (lambda (title) (string-match-p "\\`\\(?:Shorten\\|Lengthen\\) " title)) (mapcar (lambda (o) (if (consp o) (car o) o)) offered)))))
    (eglot-code-actions (point) (flymake-diagnostic-end (mismatch)) "quickfix" t))
  (eglot--signal-textDocument/didChange)
  (wait "no finding of 84 mm" (lambda () (flymake-start) (not (mismatch))))
  (let ((changed (cl-count nil (cl-mapcar #'string= (split-string original "\n") (split-string (buffer-string) "\n")))))
    (cl-assert (= changed 1))))

(step "formatting puts blanks in order"
  (let ((tidy (buffer-string)))
    (goto-char (point-min))
    (search-forward "laser")
    (insert "    ")
    (eglot--signal-textDocument/didChange)
    (eglot-format-buffer)
    (cl-assert (string= (buffer-string) tidy))))

(step "the server ends when asked to"
  (let ((server (eglot-current-server)))
    (eglot-shutdown server)
    (cl-assert (not (jsonrpc-running-p server)))))
(end 0)
