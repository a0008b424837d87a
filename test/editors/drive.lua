-- Opens a script in Neovim and works on it as a person does: waits for its findings, asks for the hover of a word, takes a
-- name that is proposed at the end, renames a constant, formats. Writes what was seen, and the text that came of it,
-- as JSON. Environment: SCRIPT, WORD, TYPED and TAKEN (what is typed, and the name that is taken), CONSTANT, RENAMED,
-- ANSWER (the file to write).
local patience = 20000
vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.SCRIPT))

local function findings()
  return vim.tbl_map(function(one)
    return { line = one.lnum + 1, code = one.code or one.user_data.lsp.code, message = one.message }
  end, vim.diagnostic.get(0))
end
vim.wait(patience, function()
  return #findings() > 0
end)
local found = findings()

local function asked(method)
  local params = vim.lsp.util.make_position_params(0, 'utf-16')
  for _, answer in pairs(vim.lsp.buf_request_sync(0, method, params, patience) or {}) do
    if answer.result then return answer.result end
  end
end

vim.fn.search(vim.env.WORD)
local hover = asked('textDocument/hover')

vim.fn.append(vim.fn.line('$'), vim.env.TYPED)
vim.fn.cursor(vim.fn.line('$'), #vim.env.TYPED)
-- In normal mode the cursor stands on the last letter; a person who types is behind it.
vim.opt.virtualedit = 'all'
vim.fn.cursor(vim.fn.line('$'), #vim.env.TYPED + 1)
local proposed = asked('textDocument/completion')
for _, item in ipairs(proposed and (proposed.items or proposed) or {}) do
  if item.label == vim.env.TAKEN then vim.lsp.util.apply_text_edits({ item.textEdit }, 0, 'utf-16') end
end

vim.fn.cursor(1, 1)
vim.fn.search(vim.env.CONSTANT)
vim.lsp.buf.rename(vim.env.RENAMED)
vim.wait(patience, function()
  return vim.fn.search('\\<' .. vim.env.CONSTANT .. '\\>', 'nw') == 0
end)

if vim.lsp.buf.format then
  vim.lsp.buf.format({ async = false, timeout_ms = patience })
else
  vim.lsp.buf.formatting_sync(nil, patience)
end

local file = assert(io.open(vim.env.ANSWER, 'w'))
local text = table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, true), '\n')
file:write(vim.json.encode({ findings = found, hover = hover and hover.contents.value or '', text = text }))
file:close()
vim.cmd('qall!')
