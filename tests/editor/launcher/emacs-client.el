;;; emacs-client.el --- Emacs with eglot as a client of the language server  -*- lexical-binding: t -*-
;; Run by tests/editor/emacs.mjs in batch mode, not with -Q, which would hide the system's packages. Opens the file of
;; $WAYFILE_ASK, waits for Flymake to show what the server found, asks for a hover, completions and the outline, lays
;; the file out and prints one line of JSON. Written for Emacs 28 with eglot 1.9.
(require 'eglot)
(require 'flymake)
(require 'json)

(define-derived-mode wayfile-mode prog-mode "Wayfile"
  (setq-local comment-start "# "))

(defun wayfile-wait (what condition)
  "Run the event loop until CONDITION holds; fail after a minute and name WHAT."
  (let ((end (+ (float-time) 60)))
    (while (not (funcall condition))
      (when (> (float-time) end) (error "No %s after a minute" what))
      (accept-process-output nil 0.05))))

(defun wayfile-at (place)
  "Parameters of a request at PLACE, a list of line and column from 1."
  (goto-char (point-min))
  (forward-line (1- (elt place 0)))
  (forward-char (1- (elt place 1)))
  (eglot--TextDocumentPositionParams))

(condition-case failure
    (let* ((ask (json-parse-string (getenv "WAYFILE_ASK") :object-type 'alist))
           (eglot-sync-connect 30)
           (eglot-autoshutdown nil)
           (make-backup-files nil)
           (answer nil))
      (add-to-list 'eglot-server-programs (cons 'wayfile-mode (append (alist-get 'command ask) nil)))
      (with-current-buffer (find-file-noselect (alist-get 'file ask))
        (wayfile-mode)
        (apply #'eglot (eglot--guess-contact))
        (let ((server (eglot--current-server-or-lose))
              (document (list :textDocument (eglot--TextDocumentIdentifier))))
          ;; What is found comes in parts; all of it is there once it no longer grows.
          (let ((seen -1))
            (wayfile-wait "finding"
                          (lambda ()
                            (flymake-start)
                            (accept-process-output nil 1)
                            (let ((before seen))
                              (setq seen (length (flymake-diagnostics)))
                              (and (> seen 0) (= seen before))))))
          (push (cons 'diagnostics
                      (vconcat (mapcar (lambda (each)
                                         `((line . ,(line-number-at-pos (flymake-diagnostic-beg each)))
                                           (text . ,(flymake-diagnostic-text each))))
                                       (flymake-diagnostics))))
                answer)
          (push (cons 'hover (jsonrpc-request server :textDocument/hover (wayfile-at (alist-get 'hover ask)))) answer)
          (push (cons 'completion
                      (jsonrpc-request server :textDocument/completion (wayfile-at (alist-get 'completion ask))))
                answer)
          (push (cons 'symbols (jsonrpc-request server :textDocument/documentSymbol document)) answer)
          (eglot-format-buffer)
          (push (cons 'formatted (buffer-string)) answer)
          (set-buffer-modified-p nil)
          (eglot-shutdown server)))
      (princ (concat (json-encode answer) "\n")))
  (error (princ (format "failed: %s\n" (error-message-string failure)))
         (kill-emacs 1)))
