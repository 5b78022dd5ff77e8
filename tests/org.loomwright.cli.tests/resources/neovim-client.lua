-- SPDX-License-Identifier: EPL-2.0
-- What a person does in Neovim with its own language client, and what came of it, as one line of JSON.
local root = vim.env.LOOM_PROJECT
local seen = {}

local function wait(what, condition)
  seen[what] = vim.wait(60000, condition, 20)
end

local function at(piece, plus)
  for number, line in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, false)) do
    local column = line:find(piece, 1, true)
    if column then
      vim.api.nvim_win_set_cursor(0, { number, column - 1 + plus })
      return
    end
  end
  error('no ' .. piece)
end

local function whole(name)
  return table.concat(vim.fn.getbufline(vim.fn.bufnr(root .. '/' .. name), 1, '$'), '\n')
end

local function steps()
  vim.o.hidden = true
  vim.cmd('edit ' .. root .. '/front-1964.loom')
  local buffer = vim.api.nvim_get_current_buf()
  local client = vim.lsp.start_client({
    name = 'loomwright', cmd = vim.fn.json_decode(vim.env.LOOM_SERVER), root_dir = root,
    workspace_folders = { { uri = vim.uri_from_fname(root), name = 'orrin' } },
  })
  vim.lsp.buf_attach_client(buffer, client)
  wait('ready', function() return #vim.lsp.buf_get_clients(buffer) > 0 end)

  -- a slip, what is said of it, and its end
  at('    datum bulkhead', 0)
  local line = vim.api.nvim_win_get_cursor(0)[1]
  vim.api.nvim_buf_set_lines(buffer, line - 1, line, false, { '    datum bulkheda' })
  wait('diagnosed', function() return #vim.diagnostic.get(buffer) > 0 end)
  local first = vim.diagnostic.get(buffer)[1]
  seen.diagnostic = { line = first.lnum + 1, column = first.col + 1, message = first.message,
    code = first.code or (first.user_data and first.user_data.lsp and first.user_data.lsp.code) }

  -- the fix that the server offers
  vim.api.nvim_win_set_cursor(0, { line, 12 })
  local range = vim.lsp.util.make_range_params()
  range.context = { diagnostics = vim.lsp.diagnostic.get_line_diagnostics(buffer, line - 1) }
  local offered = vim.lsp.buf_request_sync(buffer, 'textDocument/codeAction', range, 60000)[client].result
  vim.lsp.util.apply_workspace_edit(offered[1].edit, 'utf-16')
  seen.mended = vim.api.nvim_buf_get_lines(buffer, line - 1, line, false)[1]
  wait('healed', function() return #vim.diagnostic.get(buffer) == 0 end)

  -- completion of a cavity
  at('wire a 14 ga from J1:1 to S12', 0)
  line = vim.api.nvim_win_get_cursor(0)[1]
  vim.api.nvim_buf_set_lines(buffer, line, line, false, { '        wire q 14 ga from J1:' })
  vim.api.nvim_win_set_cursor(0, { line + 1, 29 })
  vim.cmd('startinsert!')
  local place = vim.lsp.util.make_position_params()
  place.position.character = 29
  local answer = vim.lsp.buf_request_sync(buffer, 'textDocument/completion', place, 60000)[client].result
  seen.completion = {}
  for _, item in ipairs(vim.lsp.util.text_document_completion_list_to_complete_items(answer, '')) do
    table.insert(seen.completion, item.word)
  end
  vim.api.nvim_buf_set_lines(buffer, line, line + 1, false, {})

  -- hover
  at('wire a 14 ga from J1:1 to S12', 5)
  local hover = vim.lsp.buf_request_sync(buffer, 'textDocument/hover', vim.lsp.util.make_position_params(), 60000)
  seen.hover = hover[client].result.contents.value

  -- formatting
  local before = whole('front-1964.loom')
  at('    branch bHorn', 0)
  line = vim.api.nvim_win_get_cursor(0)[1]
  local branch = vim.api.nvim_buf_get_lines(buffer, line - 1, line, false)[1]
  vim.api.nvim_buf_set_lines(buffer, line - 1, line, false, { '  ' .. branch:gsub('from', '  from '), '', '' })
  vim.lsp.buf.formatting_sync(nil, 60000)
  vim.wait(500)
  seen.formatted = whole('front-1964.loom'):gsub('\n\n', '\n') == before:gsub('\n\n', '\n')

  -- who names it
  at('    datum bulkhead', 12)
  local asked = vim.lsp.util.make_position_params()
  asked.context = { includeDeclaration = true }
  local named = vim.lsp.buf_request_sync(buffer, 'textDocument/references', asked, 60000)[client].result
  seen.references = {}
  for _, location in ipairs(named) do
    table.insert(seen.references, vim.fn.fnamemodify(vim.uri_to_fname(location.uri), ':t'))
  end

  -- a rename in all files
  at('    datum bulkhead', 12)
  vim.lsp.buf.rename('bulkheadShelf')
  wait('renamed', function() return whole('orrin.loom'):find('place bulkheadShelf', 1, true) ~= nil end)
  vim.cmd('silent wall')

  -- a jump into another file
  at('bulkhead12Plug', 3)
  -- the files that were just written may turn up as changes meanwhile, and then one presses the key again
  local pressed = 0
  wait('jumped', function()
    if vim.api.nvim_buf_get_name(0):match('catalogue.loom$') then
      return true
    end
    if vim.loop.now() - pressed > 3000 then
      pressed = vim.loop.now()
      vim.lsp.buf.definition()
    end
    return false
  end)
  seen.jump = { file = vim.fn.fnamemodify(vim.api.nvim_buf_get_name(0), ':t'),
    line = vim.api.nvim_get_current_line() }

  local rpc = vim.lsp.get_client_by_id(client)
  rpc.stop()
  wait('stopped', function() return rpc.is_stopped() end)
end

local fine, fault = pcall(steps)
seen.fault = not fine and tostring(fault) or nil
vim.fn.writefile({ vim.fn.json_encode(seen) }, vim.env.LOOM_RESULT)
vim.cmd('qa!')
